import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lifeCurve } from '../../../../main/domain/upkeep/life/curve.ts'
import { learnLife } from '../../../../main/domain/upkeep/life/learn.ts'
import { ageRange } from '../../../../main/domain/upkeep/life/range.ts'
import { ageAtSurvival, survival } from '../../../../main/domain/upkeep/life/weibull.ts'
import { aPrior, lives } from './arbitraries.ts'

const sheet = { age: 180, level: 0.9, shape: 2.5, ageSpread: 0.35, shapeSpread: 0.35 }

describe('the curve of a life', () => {
  it('falls from 1, lies in its band, and the band in 0..1', () => {
    fc.assert(
      fc.property(lives, aPrior, (seen, prior) => {
        const learned = learnLife(seen, prior)
        const points = lifeCurve(learned, prior, 3 * learned.renewAge, 40)
        expect(points).toHaveLength(40)
        expect(points[0]).toEqual({ age: 0, share: 1, low: 1, high: 1 })
        expect(points.at(-1)!.age).toBeCloseTo(3 * learned.renewAge, 9)
        points.forEach(({ age, share, low, high }, i) => {
          expect(share).toBe(survival(learned.life, age))
          expect(low).toBeLessThanOrEqual(share + 1e-12)
          expect(high).toBeGreaterThanOrEqual(share - 1e-12)
          expect(low).toBeGreaterThanOrEqual(0)
          expect(high).toBeLessThanOrEqual(1)
          if (i > 0) expect(share).toBeLessThanOrEqual(points[i - 1]!.share)
        })
      }),
    )
  })

  it('has a band about as wide, at the renewal age, as the profile’s range', () => {
    // Many readings make the two methods agree: where the band's edges reach the level, the range has its ends.
    const seen = Array.from({ length: 400 }, (_, i) => {
      const age = 120 + (i % 20) * 15
      const gone = (i * 7919) % 100 < 100 * (1 - survival({ shape: 2.5, scale: 450 }, age))
      return { inspections: [{ age, working: !gone, on: '2026-06-01' }] }
    })
    const learned = learnLife(seen, sheet)
    const points = lifeCurve(learned, sheet, 600, 6001)
    const reaches = (edge: 'low' | 'high') => points.find(point => point[edge] <= 0.9)!.age
    expect(reaches('low') / learned.range.low).toBeCloseTo(1, 1)
    expect(reaches('high') / learned.range.high!).toBeCloseTo(1, 1)
  })
})

describe('the range of an age', () => {
  it('is wider the surer it wants to be', () => {
    fc.assert(
      fc.property(lives, aPrior, (seen, prior) => {
        const { readings } = learnLife(seen, prior)
        const narrow = ageRange(readings, prior, 0.9, 0.8)
        const wide = ageRange(readings, prior, 0.9, 0.99)
        expect(wide.low).toBeLessThan(narrow.low)
        expect(wide.high!).toBeGreaterThan(narrow.high!)
      }),
    )
  })

  it('has ends where the best curve through them is just as unlikely as allowed', () => {
    // Twice the drop of the log-likelihood at an end is the squared quantile, 3.8415 (chi-square, 1 degree of freedom;
    // NIST/SEMATECH e-Handbook, section 1.3.6.7.4). The best curve through an end is searched for shape by shape.
    const readings = [
      { from: 0, to: 6, count: 2 },
      { from: 6, to: 12, count: 9 },
      { from: 12, to: 18, count: 14 },
      { from: 18, to: 24, count: 6 },
      { from: 24, to: null, count: 3 },
    ]
    const likelihood = (age: number, shape: number) => {
      const scale = age / (-Math.log(0.9)) ** (1 / shape)
      return readings.reduce((sum, { from, to, count }) => {
        const after = to === null ? 0 : survival({ shape, scale }, to)
        return sum + count * Math.log(survival({ shape, scale }, from) - after)
      }, 0)
    }
    const best = (age: number) => {
      let most = Number.NEGATIVE_INFINITY
      for (let shape = 0.5; shape < 8; shape += 0.0005) most = Math.max(most, likelihood(age, shape))
      return most
    }
    const { low, high } = ageRange(readings, null, 0.9, 0.95)
    // The fit itself: shape 2.648714, scale 16.75468 (the case topper-readings-b of the reference lives).
    const top = likelihood(ageAtSurvival({ shape: 2.648714, scale: 16.75468 }, 0.9), 2.648714)
    expect(2 * (top - best(low))).toBeCloseTo(3.8415, 3)
    expect(2 * (top - best(high!))).toBeCloseTo(3.8415, 3)
  })

  it('is open above where nothing was seen to end and nothing is believed', () => {
    expect(ageRange([{ from: 100, to: null, count: 9 }], null, 0.9, 0.95)).toEqual({ low: 0, high: null })
  })
})
