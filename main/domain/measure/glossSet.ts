/** A set of gloss readings as it is taken on a car: calibrated before, checked after, on one surface at one angle. */
import { say, sayKept } from '../language/index.ts'
import { averageGloss, checkGloss, checkTile, type Geometry, geometryFor, glossChange } from './gloss.ts'
import { differenceOf } from './repeat.ts'

/** What the makers of meters usually name, gloss units; the meter’s own sheet decides. Common practice, no source. */
export const usualGloss = { allowedGu: 1, repeatabilityGu: 0.5 } as const

export interface GlossSet {
  readonly instrument: string
  readonly tile: string
  /** The surface the set was taken on, such as `gloss` or `matte film`. */
  readonly substrate: string
  readonly geometryDeg: Geometry
  /** The tile’s figure at this angle. */
  readonly tileGu: number
  /** The tile as read before the first and after the last reading; null: not read. */
  readonly startGu: number | null
  readonly endGu: number | null
  /** Of each panel the readings at this angle. */
  readonly panels: readonly { readonly panel: string; readonly gu: readonly number[] }[]
}

/**
 * What is wrong with a set, in words; none where it may be relied on. Calibration before each set and each change of
 * surface: common practice, no source. The choice of the angle: ISO 2813:2014, clause 5.
 */
export function glossWarnings(set: GlossSet, before: GlossSet | null, allowedGu: number): string[] {
  const warnings: string[] = []
  if (set.startGu === null)
    warnings.push(
      before !== null && before.substrate !== set.substrate
        ? say(
            'The surface changed from {substrate} to {substrate2}: calibrate the meter again before this set.',
            { substrate: sayKept(before.substrate), substrate2: sayKept(set.substrate) },
          )
        : say('The meter was not calibrated before this set: read the tile first.'),
    )
  else {
    const start = checkTile(set.tileGu, set.startGu, allowedGu)
    if (!start.withinTolerance)
      warnings.push(
        say(
          'The tile read {startGu} before the set and is {tileGu}: clean it, calibrate, take the set again.',
          { startGu: set.startGu, tileGu: set.tileGu },
        ),
      )
    if (set.endGu !== null && Math.abs(set.endGu - set.startGu) > allowedGu + 1e-9)
      warnings.push(
        say('The meter drifted from {startGu} to {endGu} on its tile during the set: take it again.', {
          startGu: set.startGu,
          endGu: set.endGu,
        }),
      )
  }
  if (set.endGu === null && set.panels.length > 0)
    warnings.push(say('The tile was not read after the set, so nobody knows whether the meter drifted.'))
  if (set.instrument.trim() === '' || set.tile.trim() === '')
    warnings.push(say('Note the serial numbers of the meter and its tile.'))
  const at60 = set.geometryDeg === 60 ? set.panels.flatMap(({ gu }) => gu) : []
  const [low, high] = [Math.min(...at60), Math.max(...at60)]
  if (high > 70 && geometryFor(low) === 20)
    warnings.push(say('All of it is above 70 at 60°: read it at 20° as well.'))
  else if (low < 10 && geometryFor(high) === 85)
    warnings.push(say('All of it is below 10 at 60°: read it at 85° as well.'))
  return warnings
}

export interface GlossDifference {
  readonly panel: string
  readonly geometryDeg: Geometry
  readonly beforeGu: number
  readonly afterGu: number
  readonly changeGu: number
  /** The least change that is real. */
  readonly limitGu: number
  readonly real: boolean
}

/**
 * Panel by panel what the work gained, of sets at the same angle only, with the change that repeating a reading alone
 * could make (ISO 5725-6). A panel that was read on one side only is left out.
 */
export function glossDifferences(
  before: readonly GlossSet[],
  after: readonly GlossSet[],
  repeatabilityGu: number,
): GlossDifference[] {
  const read = readingsOf(after)
  return [...readingsOf(before)].flatMap(([key, was]) => {
    const now = read.get(key)
    if (!now) return []
    const beforeGu = averageGloss(was.readings).meanGu
    const afterGu = averageGloss(now.readings).meanGu
    const { panel, geometryDeg } = was
    const changeGu = glossChange({ geometryDeg, gu: beforeGu }, { geometryDeg: now.geometryDeg, gu: afterGu })
    const { limit, real } = differenceOf(changeGu, repeatabilityGu, {
      before: was.readings.length,
      after: now.readings.length,
    })
    return [{ panel, geometryDeg, beforeGu, afterGu, changeGu, limitGu: limit, real }]
  })
}

function readingsOf(sets: readonly GlossSet[]) {
  const found = new Map<
    string,
    { panel: string; geometryDeg: Geometry; readings: { geometryDeg: Geometry; gu: number }[] }
  >()
  for (const { geometryDeg, panels } of sets)
    for (const { panel, gu } of panels)
      for (const each of gu) {
        const key = `${panel} ${geometryDeg}`
        const kept = found.get(key) ?? { panel, geometryDeg, readings: [] }
        kept.readings.push({ geometryDeg, gu: checkGloss(each, 'gu') })
        found.set(key, kept)
      }
  return found
}
