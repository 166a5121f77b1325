import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wilson } from '../../../../main/domain/upkeep/results/wilson.ts'
import { type Case, expectNear } from '../../../reference/cases.ts'
import statistics from '../../../reference/statistics.json' with { type: 'json' }

type WilsonCase = Case<{ successes: number; trials: number }, { low: number; high: number }>
const cases = statistics.cases.filter(entry => entry.id.startsWith('wilson-')) as unknown as WilsonCase[]

describe('the Wilson interval', () => {
  it.each(cases)('$id [$source; $provenance]', ({ input, expected, tolerance }) => {
    const { low, high } = wilson(input.successes, input.trials)
    expectNear(low, expected.low, tolerance)
    expectNear(high, expected.high, tolerance)
  })

  it('has cases', () => {
    expect(cases).toHaveLength(3)
  })

  it('holds the share seen, stays in 0..1, mirrors, and narrows with trials', () => {
    const counts = fc
      .integer({ min: 1, max: 5000 })
      .chain(n => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)))
    const level = fc.constantFrom(0.8, 0.9, 0.95, 0.99)
    fc.assert(
      fc.property(counts, level, ([successes, trials], confidence) => {
        const { low, high } = wilson(successes, trials, confidence)
        const share = successes / trials
        expect(low).toBeGreaterThanOrEqual(0)
        expect(high).toBeLessThanOrEqual(1)
        expect(low).toBeLessThanOrEqual(share)
        expect(high).toBeGreaterThanOrEqual(share)
        const mirrored = wilson(trials - successes, trials, confidence)
        expect(mirrored.low).toBeCloseTo(1 - high, 12)
        const more = wilson(successes * 4, trials * 4, confidence)
        expect(more.high - more.low).toBeLessThan(high - low)
        // Its ends are where the score test just holds: |p - share| = z sqrt(p(1-p)/n).
        const z = { 0.8: 1.2815515655, 0.9: 1.644853627, 0.95: 1.959963985, 0.99: 2.575829304 }[confidence]
        for (const end of [low, high])
          if (end > 0 && end < 1)
            expect(Math.abs(end - share)).toBeCloseTo(z * Math.sqrt((end * (1 - end)) / trials), 8)
      }),
    )
  })

  it('knows nothing without trials, and refuses counts that cannot be', () => {
    expect(wilson(0, 0)).toEqual({ low: 0, high: 1 })
    expect(() => wilson(3, 2)).toThrow(expect.objectContaining({ code: 'more-than-all' }))
    expect(() => wilson(-1, 2)).toThrow(expect.objectContaining({ field: 'successes' }))
    expect(() => wilson(1, 2.5)).toThrow(expect.objectContaining({ field: 'trials' }))
  })
})
