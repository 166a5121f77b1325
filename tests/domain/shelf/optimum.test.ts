/** The project's rule against the exact optimum of a shop small enough for dynamic programming. */
import { describe, expect, it } from 'vitest'
import { buildModel, leastCostAt, measure, solve } from '../../bench/simulation/smallOptimum.ts'
import { minMaxSmall, ownRule } from '../../bench/simulation/smallRules.ts'
import { SMALL_SHOPS } from '../../bench/simulation/smallShops.ts'

const shop = SMALL_SHOPS.keeps
const model = buildModel(shop)
const index = new Map(model.states.map((state, i) => [state, i]))

describe('the optimum', () => {
  it('is what its own plan costs when it is measured', () => {
    for (const missPrice of [300, 3000]) {
      const { costPerDay, plan } = solve(model, missPrice)
      const got = measure(model, state => plan[index.get(state)!]!)
      expect(got.costPerDay + missPrice * got.missedPerDay).toBeCloseTo(costPerDay, 1)
    }
  })

  it('is never above the cost of any other rule with the same service', () => {
    for (const [min, max] of [
      [2, 9],
      [4, 12],
      [6, 9],
    ] as const) {
      const got = measure(model, minMaxSmall(shop, min, max))
      expect(leastCostAt(model, got.missedPerDay)).toBeLessThan(got.costPerDay + 0.1)
    }
  })
})

describe('the project’s rule', () => {
  it('stays within 3 % of it at the service it reaches', () => {
    const { policy, rule } = ownRule(shop, 0.95)
    const got = measure(model, rule)
    expect(got.service).toBeGreaterThan(0.945)
    expect(Math.abs(got.service - policy.best.service)).toBeLessThan(0.01)
    expect(got.costPerDay).toBeLessThan(1.03 * leastCostAt(model, got.missedPerDay))
  })
})

describe('the project’s rule for goods that expire', () => {
  it('stays within 3 % too, with every batch and its date looked at', () => {
    const brief = { ...SMALL_SHOPS.expires, life: 4, most: 6 }
    const own = buildModel(brief)
    for (const target of [0.85, 0.95]) {
      const { policy, rule } = ownRule(brief, target)
      const got = measure(own, rule)
      expect(policy.lines!.service).toBeGreaterThanOrEqual(target)
      // Set aside days before they are drawn, booked cells seem safer from their date than they are.
      expect(Math.abs(got.service - policy.lines!.service)).toBeLessThan(0.03)
      expect(got.costPerDay).toBeLessThan(1.03 * leastCostAt(own, got.missedPerDay))
    }
  })
})
