import { describe, expect, it } from 'vitest'
import { type Advice, type Advised, proposeOrders, type Supplier } from '../../../main/domain/shelf/index.ts'
import { adviceAt, offer } from './orderFixture.ts'

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
})
