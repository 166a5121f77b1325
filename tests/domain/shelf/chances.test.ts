import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addIndependent,
  cumulative,
  disturbed,
  histogram,
  leastCover,
  mixture,
  moreOften,
  varianceOf,
} from '../../../main/domain/shelf/chances.ts'
import { latticeStep, meanOf } from '../../../main/domain/shelf/index.ts'
import { poisson } from './poisson.ts'

const chances = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 12 })
  .filter(list => list.some(weight => weight > 0.01))
  .map(list => {
    const sum = list.reduce((a, b) => a + b, 0)
    return Float64Array.from(list, weight => weight / sum)
  })
const total = (list: Float64Array) => list.reduce((a, b) => a + b, 0)

describe('chances on a lattice', () => {
  it('of independent amounts add up in mean and variance', () => {
    fc.assert(
      fc.property(chances, chances, (a, b) => {
        const sum = addIndependent(a, b, 1000)
        expect(total(sum)).toBeCloseTo(1, 10)
        expect(meanOf(sum)).toBeCloseTo(meanOf(a) + meanOf(b), 8)
        expect(varianceOf(sum)).toBeCloseTo(varianceOf(a) + varianceOf(b), 8)
      }),
    )
  })

  it('gather in the last cell what lies beyond the cap, losing no chance', () => {
    fc.assert(
      fc.property(chances, chances, fc.integer({ min: 1, max: 8 }), (a, b, cap) => {
        const whole = cumulative(addIndependent(a, b, 1000))
        const cut = addIndependent(a, b, cap)
        expect(total(cut)).toBeCloseTo(1, 10)
        cumulative(cut).forEach((share, k) => {
          if (k < cut.length - 1) expect(share).toBeCloseTo(whole[k]!, 10)
        })
      }),
    )
  })

  it('agree with Poisson chances, which add up to a Poisson', () => {
    const sum = addIndependent(poisson(1.3), poisson(2.4), 60)
    poisson(3.7).forEach((chance, k) => {
      if (k < 20) expect(sum[k]).toBeCloseTo(chance, 10)
    })
  })

  it('keep the mean of amounts between the cells', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 1, maxLength: 20 }),
        list => {
          const mean = list.reduce((a, b) => a + b, 0) / (list.length + 3)
          expect(meanOf(histogram(list, 3))).toBeCloseTo(mean, 9)
        },
      ),
    )
  })

  it('scale the mean when something happens more or less often, also beyond always', () => {
    fc.assert(
      fc.property(chances, fc.double({ min: 0.1, max: 5, noNaN: true }), (list, factor) => {
        const scaled = moreOften(list, factor)
        expect(total(scaled)).toBeCloseTo(1, 8)
        expect(meanOf(scaled)).toBeCloseTo(meanOf(list) * factor, 7)
        expect(Math.min(...scaled)).toBeGreaterThanOrEqual(-1e-12)
      }),
    )
  })

  it('widen by the variance of a disturbance', () => {
    const start = Float64Array.from({ length: 40 }, (_, k) => (k === 20 ? 1 : 0))
    for (const variance of [0.2, 1, 3.7]) {
      const wide = disturbed(start, variance, 100)
      expect(meanOf(wide)).toBeCloseTo(20, 9)
      expect(varianceOf(wide)).toBeCloseTo(variance, 9)
    }
  })

  it('mix by weight', () => {
    expect([...mixture([Float64Array.of(1), Float64Array.of(0, 0, 1)], [0.25, 0.75])]).toEqual([
      0.25, 0, 0.75,
    ])
  })

  it('are covered by the least number of cells, never fewer', () => {
    fc.assert(
      fc.property(chances, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (list, share) => {
        const k = leastCover(list, share)
        expect(cumulative(list)[k]!).toBeGreaterThanOrEqual(share - 1e-9)
        if (k > 0) expect(cumulative(list)[k - 1]!).toBeLessThan(share)
      }),
    )
    expect(() => leastCover(Float64Array.of(1), 1)).toThrow(/between 0 and 1/)
  })

  it('stand on a step that divides a pack', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 0, max: 5_000_000 }),
        (pack, draw, ahead) => {
          const parts = pack / latticeStep(pack, draw, ahead)
          expect(parts).toBeCloseTo(Math.round(parts), 6)
          expect(parts).toBeGreaterThan(0.99)
        },
      ),
    )
  })
})
