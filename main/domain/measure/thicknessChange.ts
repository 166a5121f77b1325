import { differenceOf } from './repeat.ts'
import { type CarThickness, carThickness, type ThicknessReading } from './thickness.ts'

export interface ThicknessDifference {
  readonly panel: string
  readonly beforeUm: number
  readonly afterUm: number
  readonly changeUm: number
  /** The least change that is real. */
  readonly limitUm: number
  readonly real: boolean
}

/**
 * Panel by panel what the work took off, in micrometres, of the panels read on both sides, with the change that repeating
 * a reading alone could make (ISO 5725-6, as `differenceOf`).
 * @throws Refusal `thickness-bad` for what no paint is, `not-positive` for a repeatability of 0 or less.
 */
export function thicknessDifferences(
  before: readonly ThicknessReading[],
  after: readonly ThicknessReading[],
  repeatabilityUm: number,
): ThicknessDifference[] {
  const was = panelsOf(before)
  return [...panelsOf(after).values()].flatMap(now => {
    const then = was.get(now.panel)
    if (!then) return []
    const { limit, difference, real } = differenceOf(now.typicalUm - then.typicalUm, repeatabilityUm, {
      before: then.readings,
      after: now.readings,
    })
    return [
      {
        panel: now.panel,
        beforeUm: then.typicalUm,
        afterUm: now.typicalUm,
        changeUm: difference,
        limitUm: limit,
        real,
      },
    ]
  })
}

const panelsOf = (readings: readonly ThicknessReading[]): Map<string, CarThickness['panels'][number]> =>
  new Map(carThickness(readings).panels.map(panel => [panel.panel, panel]))
