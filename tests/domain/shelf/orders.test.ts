import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Advice,
  type Advised,
  adviceReasons,
  advise,
  cheapestWay,
  choosePolicy,
  type Demand,
  type Offer,
  type PlannedProduct,
  planSupplier,
  proposeOrders,
  repriced,
  type Supplier,
  stockPosition,
} from '../../../main/domain/shelf/index.ts'
import { packsToOrder } from '../../../main/domain/shelf/position.ts'
import { trueDemand } from '../../bench/simulation/smallRules.ts'
import { SMALL_SHOPS } from '../../bench/simulation/smallShops.ts'

const shop = SMALL_SHOPS.keeps
/** The small demand with cells of 10 ml instead of one. */
const demand: Demand = (() => {
  const cells = trueDemand(shop, 6)
  const scale = 1000
  return {
    ...cells,
    stepCenti: scale,
    perDayCenti: cells.perDayCenti * scale,
    perDayVariance: cells.perDayVariance * scale ** 2,
    aheadMeanCenti: cells.aheadMeanCenti.map(mean => mean * scale),
  }
})()
const cover = Float64Array.of(0, 0, 0.1, 0.6, 0.2, 0.1)
const arrival = Float64Array.of(0, 0.1, 0.6, 0.2, 0.1)
const orderCost = { carriageMinor: 1000, freeFromMinor: null, lineMinor: 100 }
const planned: PlannedProduct = {
  productId: 'p',
  demand,
  cover,
  packCenti: 3000,
  breaks: [{ fromPacks: 1, packPriceMinor: 2000 }],
  holdRatePerDay: 0.05,
  service: 0.95,
  lifeDays: null,
}
const plan = choosePolicy({ ...planned, orderCost, joinChance: 0.2 })!
const offer: Offer = {
  supplierId: 's',
  productId: 'p',
  sizeId: 'z',
  packCenti: 3000,
  containersPerPack: 1,
  breaks: planned.breaks,
  shelfLifeDays: null,
}
const shelf = (centi: number, part: object = {}) =>
  stockPosition({
    stock: [{ centi, openDays: null }],
    underWayCenti: 0,
    waitingCenti: 0,
    booked: [],
    cover,
    demand,
    ...part,
  })
const adviceAt = (centi: number, part: object = {}, more: object = {}) =>
  advise({
    productId: 'p',
    offer,
    plan,
    demand,
    position: shelf(centi, part),
    arrival,
    lifeDays: null,
    service: 0.95,
    ...more,
  })

describe('the stock position', () => {
  it('nets what is booked until the next delivery, and no later', () => {
    const booked = [1, 2, 3, 4, 5, 6].map(inDays => ({ inDays, centi: 1000 }))
    const position = shelf(10_000, { booked, underWayCenti: 3000, waitingCenti: 500 })
    expect(position.coverDays).toBe(4)
    expect(position).toMatchObject({ bookedCenti: 4000, positionCenti: 10_000 + 3000 - 500 - 4000 })
  })

  it('does not count on what will expire before it is used', () => {
    const soon = shelf(0, {
      stock: [
        { centi: 20_000, openDays: 1 },
        { centi: 5000, openDays: null },
      ],
    })
    expect(soon.expiringCenti).toBeGreaterThan(18_000)
    expect(soon.expiringCenti).toBeLessThan(20_000)
    const booked = [{ inDays: 1, centi: 19_000 }]
    const used = shelf(0, { stock: [{ centi: 20_000, openDays: 1 }], booked })
    expect(used.expiringCenti).toBeLessThan(1000)
    expect(shelf(0, { stock: [{ centi: 20_000, openDays: 90 }] }).expiringCenti).toBe(0)
  })

  it('never makes more of a shelf than is on it', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ centi: fc.integer({ min: 0, max: 9000 }), openDays: fc.integer({ min: 0, max: 8 }) }),
        ),
        stock => {
          const position = shelf(0, { stock })
          expect(position.expiringCenti).toBeGreaterThanOrEqual(0)
          expect(position.expiringCenti).toBeLessThanOrEqual(position.onHandCenti + 1e-9)
        },
      ),
    )
  })
})

describe('advice', () => {
  it('orders below the point only, and brings the position back above it by whole packs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40_000 }),
        fc.integer({ min: 0, max: 9000 }),
        (centi, bookedCenti) => {
          const advice = adviceAt(centi, { booked: [{ inDays: 1, centi: bookedCenti }] })
          const { positionCenti } = advice.position
          if (positionCenti >= advice.orderPointCenti)
            expect(advice).toMatchObject({ packs: 0, reason: null })
          else {
            const after = positionCenti + advice.packs * 3000
            expect(after).toBeGreaterThanOrEqual(advice.orderPointCenti)
            expect(after).toBeLessThan(advice.orderPointCenti + plan.best.packs * 3000)
            expect(advice).toMatchObject({ reason: 'below-point', joinPacks: 0 })
          }
        },
      ),
    )
    expect(packsToOrder(99, 100, 2, 50)).toBe(3)
    expect(packsToOrder(100, 100, 2, 50)).toBe(0)
  })

  it('joins between the two points, and covers nothing twice', () => {
    const between = adviceAt(plan.best.orderPointCenti + 10)
    expect(between.packs).toBe(0)
    expect(between.joinPacks).toBe(plan.best.packs - 1)
    expect(adviceAt(plan.best.joinPointCenti + 10).joinPacks).toBe(0)
    expect(adviceAt(0, { underWayCenti: 60_000 }).packs).toBe(0)
  })

  it('never orders more than will be used before it expires, but what booked jobs need', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 0, max: 30_000 }),
        fc.integer({ min: 2, max: 40 }),
        (centi, bookedCenti, lifeDays) => {
          const advice = adviceAt(centi, { booked: [{ inDays: 2, centi: bookedCenti }] }, { lifeDays })
          const leadDays = 2.3
          const used = demand.perDayCenti * (leadDays + lifeDays)
          const needed = Math.max(0, Math.ceil(-advice.position.positionCenti / 3000))
          const inLine = advice.position.onHandCenti
          if (advice.packs > needed) expect(advice.packs * 3000 + inLine).toBeLessThanOrEqual(used + 1)
          expect(advice.joinPacks === 0 || advice.joinPacks * 3000 + inLine <= used + 1).toBe(true)
          expect(advice.beyondExpiry).toBe(advice.packs > 0 && advice.packs > advice.mostPacks!)
        },
      ),
    )
  })

  it('orders for bookings alone where no use is on record', () => {
    const fresh = { ...demand, perDayCenti: 0 }
    const booked = [{ inDays: 2, centi: 4000 }]
    expect(adviceAt(0, { booked, demand }, { plan: null, demand: fresh })).toMatchObject({
      packs: 2,
      reason: 'bookings',
    })
    expect(adviceAt(0, {}, { plan: null, demand: fresh })).toMatchObject({
      packs: 0,
      reason: null,
      daysToPoint: null,
    })
  })

  it('explains every number in a sentence of its own', () => {
    const reasonsOf = (advice: Advice, policy = plan as typeof plan | null) =>
      adviceReasons({
        advice,
        plan: policy,
        unit: 'ml',
        packCenti: 3000,
        lead: { meanDays: 3.2, sdDays: 0.9 },
        demand,
        level: null,
      })
    const order = reasonsOf(adviceAt(500, { booked: [{ inDays: 1, centi: 2000 }], waitingCenti: 300 }))
    expect(order.map(reason => reason.code)).toEqual([
      'position',
      'cover',
      'demand',
      'safety-stock',
      'textbook',
      'order-point',
      'lasts',
      'size',
    ])
    expect(order[0]!.text).toBe(
      '5 ml on the shelf, less 3 ml jobs wait for, less 20 ml booked until the next delivery: ' +
        '-18 ml to meet what nobody has booked yet.',
    )
    for (const { text, values } of order) {
      expect(text).toMatch(/^[A-Z0-9].*\.$/)
      for (const value of Object.values(values)) expect(Number.isFinite(value)).toBe(true)
    }
    const short = adviceAt(0, { booked: [{ inDays: 1, centi: 9000 }] }, { lifeDays: 1 })
    expect(reasonsOf(short).map(reason => reason.code)).toEqual(
      expect.arrayContaining(['expiry-cap', 'beyond-expiry']),
    )
    expect(reasonsOf(adviceAt(plan.best.orderPointCenti + 10)).map(reason => reason.code)).toContain('join')
    const fresh = adviceAt(0, {}, { plan: null })
    expect(reasonsOf(fresh, null).map(reason => reason.code)).toEqual(['position', 'cover', 'no-history'])
  })
})

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

  it('name the cheapest way to buy', () => {
    const dearer = { ...planned, breaks: [{ fromPacks: 1, packPriceMinor: 2600 }] }
    const ways = [dearer, planned].map(product => ({
      product,
      policy: choosePolicy({ ...product, orderCost, joinChance: 0 })!,
    }))
    expect(cheapestWay(ways)!.product).toBe(planned)
    expect(cheapestWay([])).toBeUndefined()
  })
})

describe('orders', () => {
  const supplier: Supplier = {
    id: 's',
    name: 'Halden Supply',
    weekdays: [1, 2, 3, 4, 5],
    closedOn: [],
    cutoffMin: null,
    lead: { meanDays: 3, sdDays: 1 },
    minimumOrderMinor: 0,
    carriageMinor: 900,
    freeCarriageFromMinor: 12_000,
  }
  const breaks = [
    { fromPacks: 1, packPriceMinor: 2000 },
    { fromPacks: 4, packPriceMinor: 1700 },
  ]
  const advised = (productId: string, part: Partial<Advice>, supplierId = 's'): Advised => ({
    advice: { ...adviceAt(0), productId, packs: 0, joinPacks: 0, reason: null, mostPacks: null, ...part },
    offer: { ...offer, productId, sizeId: `size of ${productId}`, supplierId, breaks },
  })

  it('are made only where something is due, and take what joins along', () => {
    const list = [
      advised('a', { packs: 3, reason: 'below-point' }),
      advised('b', { joinPacks: 5 }),
      advised('c', {}),
      advised('d', { joinPacks: 5 }, 'other'),
    ]
    const orders = proposeOrders(list, [supplier, { ...supplier, id: 'other' }])
    expect(orders).toHaveLength(1)
    expect(orders[0]).toMatchObject({
      supplierId: 's',
      goodsMinor: 3 * 2000 + 5 * 1700,
      carriageMinor: 0,
      belowMinimumMinor: 0,
      toFreeCarriageMinor: null,
    })
    expect(orders[0]!.lines.map(line => [line.productId, line.packs, line.reason])).toEqual([
      ['a', 3, 'below-point'],
      ['b', 5, 'joins'],
    ])
  })

  it('carry carriage until it is free, and say how far that is', () => {
    const [order] = proposeOrders([advised('a', { packs: 3, reason: 'below-point' })], [supplier])
    expect(order).toMatchObject({ carriageMinor: 900, totalMinor: 6900, toFreeCarriageMinor: 6000 })
  })

  it('bring forward what is due soonest to reach the supplier’s minimum, within its expiry', () => {
    const list = [
      advised('a', { packs: 1, reason: 'below-point', daysToPoint: 0, mostPacks: 2 }),
      advised('b', { daysToPoint: 4, perDayCenti: 100 }),
      advised('c', { daysToPoint: 20, perDayCenti: 100 }),
    ]
    const [order] = proposeOrders(list, [{ ...supplier, minimumOrderMinor: 8000 }])
    expect(order!.goodsMinor).toBeGreaterThanOrEqual(8000)
    expect(order!.lines.map(line => [line.productId, line.packs, line.reason])).toEqual([
      ['a', 2, 'below-point'],
      ['b', 1, 'minimum'],
      ['c', 1, 'minimum'],
    ])
    const alone = advised('a', { packs: 1, reason: 'below-point', mostPacks: 1, daysToPoint: 0 })
    const [short] = proposeOrders([alone], [{ ...supplier, minimumOrderMinor: 8000 }])
    expect(short).toMatchObject({ goodsMinor: 2000, belowMinimumMinor: 6000 })
  })

  it('follow a person’s changes, price breaks and all', () => {
    const list = [advised('a', { packs: 3, reason: 'below-point' }), advised('b', { joinPacks: 2 })]
    const changed = repriced(
      list,
      supplier,
      new Map([
        ['a', 4],
        ['b', 0],
      ]),
    )
    expect(changed.lines).toMatchObject([
      { productId: 'a', packs: 4, packPriceMinor: 1700, amountMinor: 6800 },
    ])
    expect(repriced(list, supplier, new Map())).toMatchObject({ lines: [], totalMinor: 0 })
  })
})
