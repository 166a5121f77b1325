// Published interval-censored lives and closed forms; the source and provenance of each stand with the case.
import { describe, expect, it } from 'vitest'
import { fitLife } from '../../../../main/domain/upkeep/life/fit.ts'
import type { LifeReading } from '../../../../main/domain/upkeep/life/reading.ts'
import { ageAtSurvival, conditionalAge } from '../../../../main/domain/upkeep/life/weibull.ts'
import survival from '../../../reference/survival.json' with { type: 'json' }

interface SurvivalCase {
  id: string
  input: {
    intervals?: LifeReading[]
    inspectedAt?: number
    stillWorking?: number
    of?: number
    shapeFixedAt?: number
    shape?: number
    scale?: number
    stillWorkingAt?: number
    level?: number
  }
  expected: Record<string, number>
  tolerance: string
  source: string
  provenance: string
}
const cases = survival.cases as SurvivalCase[]

function within(actual: number, expected: number, tolerance: string) {
  const [, amount] = /^relative ([\d.e+-]+)$/.exec(tolerance) ?? []
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThanOrEqual(Number(amount))
}

function check({ input, expected, tolerance }: SurvivalCase) {
  if (input.intervals) {
    const { life, logLikelihood } = fitLife(input.intervals)
    within(life.shape, expected.shape!, tolerance)
    within(life.scale, expected.scale!, tolerance)
    within(logLikelihood, expected.logLikelihood!, tolerance)
    within(ageAtSurvival(life, 0.9), expected.t90!, tolerance)
    within(ageAtSurvival(life, 0.5), expected.t50!, tolerance)
  } else if (input.inspectedAt) {
    const readings = [
      { from: input.inspectedAt, to: null, count: input.stillWorking! },
      { from: 0, to: input.inspectedAt, count: input.of! - input.stillWorking! },
    ]
    within(fitLife(readings, { shape: input.shapeFixedAt! }).life.scale, expected.scale!, tolerance)
  } else {
    const life = { shape: input.shape!, scale: input.scale! }
    within(conditionalAge(life, input.level!, input.stillWorkingAt!), expected.renewAt!, tolerance)
  }
}

describe('lives read at intervals', () => {
  it.each(cases)('$id [$source; $provenance]', check)

  it('has cases of all three kinds', () => {
    expect(cases.filter(({ input }) => input.intervals)).toHaveLength(5)
    expect(cases.filter(({ input }) => input.inspectedAt)).toHaveLength(3)
    expect(cases.filter(({ input }) => input.stillWorkingAt !== undefined)).toHaveLength(4)
  })
})
