/**
 * A shop of five years played out with the project's own rule and with min-max: the short form of the bench, with bounds
 * that a worse rule breaks. Five years of one product are a few hundred draws, so chance alone moves a service by about
 * half a point; the bench runs 20,000 weeks.
 */
import { describe, expect, it } from 'vitest'
import { lustrumRule } from '../../bench/simulation/lustrumRule.ts'
import { tuneMinMax } from '../../bench/simulation/minMax.ts'
import { type Rule, runShop } from '../../bench/simulation/run.ts'
import { makeWorld, PRODUCTS } from '../../bench/simulation/shop.ts'

describe('a shop played out week by week', () => {
  const world = makeWorld(PRODUCTS, 500, 500, 7)
  const own = runShop(world, lustrumRule(world))

  it('serves each product within two points of its target', () => {
    own.service.forEach((service, p) => {
      expect(own.draws[p]!).toBeGreaterThan(200)
      expect(Math.abs(service - PRODUCTS[p]!.service)).toBeLessThan(0.02)
    })
  })

  it('costs at least 15 % less than min-max tuned with hindsight to serve no better', () => {
    const { result } = tuneMinMax(world, own.service, 'just-short')
    result.service.forEach((service, p) => {
      expect(service).toBeLessThanOrEqual(own.service[p]!)
      expect(service).toBeGreaterThan(own.service[p]! - 0.03)
    })
    expect(own.costPerWeek).toBeLessThan(0.85 * result.costPerWeek)
  })

  it('loses almost nothing to expiry', () => {
    const bought = own.stockValueMinor.reduce((a, b) => a + b, 0)
    expect(own.wasteMinor.reduce((a, b) => a + b, 0)).toBeLessThan(0.001 * bought)
  })
})

describe('the simulated shop itself', () => {
  it('is the same shop for the same seed, and another for another', () => {
    const [a, b, c] = [3, 3, 4].map(seed => makeWorld(PRODUCTS, 20, 20, seed))
    expect(a!.draws).toEqual(b!.draws)
    expect(a!.draws).not.toEqual(c!.draws)
  })

  it('balances: what was bought was used, waits, expired or is still there', () => {
    const world = makeWorld(PRODUCTS, 100, 20, 5)
    // More of the topper than its life uses, so that some of it does expire.
    const hoarded = [5, 5, 12]
    const bought = PRODUCTS.map(product => 4 * product.packCenti)
    let last: readonly { there: number; waiting: number; coming: number }[] = []
    const hoard: Rule = {
      order: (_day, views) => {
        last = views.map(view => ({
          there: view.lots.reduce((sum, lot) => sum + lot.centi, 0),
          waiting: view.waitingCenti,
          coming: view.underWayCenti,
        }))
        return PRODUCTS.map((product, p) => {
          const packs = view(p) < 3 * product.packCenti ? hoarded[p]! : 0
          bought[p]! += packs * product.packCenti
          return packs
        })
      },
    }
    const view = (p: number) => last[p]!.there + last[p]!.coming - last[p]!.waiting
    const result = runShop(world, hoard)
    PRODUCTS.forEach((product, p) => {
      const asked = world.draws[p]!.slice(20).flat()
      const used = asked.reduce((sum, draw) => sum + draw.centi, 0) - last[p]!.waiting
      const lastOrder = view(p) < 3 * product.packCenti ? hoarded[p]! * product.packCenti : 0
      const rest = bought[p]! - lastOrder - used - last[p]!.there - last[p]!.coming
      // What is neither used nor there has expired; it is worth what its waste cost, at most at the single price.
      expect(rest).toBeGreaterThanOrEqual(0)
      const price = product.breaks[0]!.packPriceMinor / product.packCenti
      expect(result.wasteMinor[p]! * 100).toBeCloseTo(rest * price, 0)
    })
    expect(result.wasteMinor[2]!).toBeGreaterThan(0)
  })
})
