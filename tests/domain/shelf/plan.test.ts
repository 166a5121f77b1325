import { describe, expect, it } from 'vitest'
import { planSupplier } from '../../../main/domain/shelf/index.ts'
import { choosePolicy } from '../../../main/domain/shelf/policy.ts'
import { demand, orderCost, planned } from './orderFixture.ts'

describe('plans of one supplier', () => {
  it('let products that share a parcel join each other, and settle', () => {
    const products = [planned, { ...planned, productId: 'q', service: 0.98 }]
    const plans = planSupplier(products, orderCost)
    const alone = choosePolicy({ ...planned, orderCost, joinChance: 0 })!
    expect(plans.get('p')!.best.costPerDay).toBeLessThan(alone.best.costPerDay)
    const again = planSupplier(products, orderCost, plans)
    for (const id of ['p', 'q'])
      expect(again.get(id)!.best.ownOrdersPerDay).toBeCloseTo(plans.get(id)!.best.ownOrdersPerDay, 2)
    const idle = { ...planned, productId: 'r', demand: { ...demand, perDayCenti: 0 } }
    expect(planSupplier([idle], orderCost).get('r')).toBeNull()
  })
})
