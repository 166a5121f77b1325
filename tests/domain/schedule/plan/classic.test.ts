import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layShop, makespanOf } from '../../../../main/domain/schedule/plan/classic.ts'
import { type JobShop, variants } from '../../../../main/domain/schedule/plan/types.ts'
import { lastOf, shopCase } from './cases.ts'
import { verifyShop } from './verifyShop.ts'

describe('ft06, by its published optima', () => {
  const { shop, optima } = shopCase('ft06')
  for (const variant of variants)
    test(`${variant}: ${optima[variant]!.makespan}`, () => {
      const { plan, costs, bound, proven } = lastOf(layShop(shop, variant))
      expect(verifyShop(shop, variant, plan!)).toEqual([])
      expect(makespanOf(shop, plan!)).toBe(costs![0])
      expect({ makespan: costs![0], bound: bound[0], proven }).toEqual({
        makespan: optima[variant]!.makespan,
        bound: optima[variant]!.makespan,
        proven: true,
      })
    })
})

describe('la01 within a number of runs', () => {
  const { shop, optima } = shopCase('la01')
  for (const variant of variants)
    test(`${variant}: a sound plan, and the optimum between it and the bound`, () => {
      const { plan, costs, bound } = lastOf(layShop(shop, variant), 20)
      expect(verifyShop(shop, variant, plan!)).toEqual([])
      expect(bound[0]).toBeLessThanOrEqual(optima[variant]!.makespan)
      expect(costs![0]).toBeGreaterThanOrEqual(optima[variant]!.makespan)
    })
})

describe('tiny shops, by trying every plan', () => {
  const operation = fc.tuple(fc.nat(1), fc.integer({ min: 1, max: 3 }))
  const shops = fc.array(fc.array(operation, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 3 })
  for (const variant of variants)
    test(variant, () => {
      fc.assert(
        fc.property(shops, shop => {
          const { plan, costs, proven } = lastOf(layShop(shop, variant))
          expect(proven).toBe(true)
          const best = shortest(shop, variant)
          expect(costs?.[0]).toBe(best)
          if (plan) expect(verifyShop(shop, variant, plan)).toEqual([])
        }),
        { numRuns: 40, seed: 21 },
      )
    })
})

/** The least makespan of all starts there are. */
function shortest(shop: JobShop, variant: (typeof variants)[number]): number | undefined {
  const horizon = shop.flat().reduce((sum, [, minutes]) => sum + minutes, 0)
  let best: number | undefined
  const extend = (starts: readonly (readonly number[])[]) => {
    const job = shop[starts.length]
    if (!job) {
      const makespan = makespanOf(shop, starts)
      if (makespan < (best ?? horizon + 1) && verifyShop(shop, variant, starts).length === 0) best = makespan
      return
    }
    const last = (best ?? horizon + 1) - 1
    for (let t = 0; t + job[0]![1] <= last; t++)
      if (job.length === 1) extend([...starts, [t]])
      else for (let u = t + job[0]![1]; u + job[1]![1] <= last; u++) extend([...starts, [t, u]])
  }
  extend([])
  return best
}
