import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Advice, adviceReasons } from '../../../main/domain/shelf/index.ts'
import { packsToOrder } from '../../../main/domain/shelf/position.ts'
import { adviceAt, demand, plan, shelf } from './orderFixture.ts'

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
  it('orders for a job that would lack something, though the order point is not reached', () => {
    const calm = adviceAt(30_000)
    expect(calm).toMatchObject({ packs: 0, reason: null })
    // Packs of 3000: two for the job, and with them the order of the usual size.
    const advice = adviceAt(30_000, {}, { jobShortCenti: 4000 })
    expect(advice).toMatchObject({ packs: plan.best.packs + 1, reason: 'bookings', joinPacks: 0 })
    // Under the point anyway, the point decides.
    expect(adviceAt(0, {}, { jobShortCenti: 1 })).toMatchObject({ reason: 'below-point' })
  })

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

  it('is by the dates of what is there where the plan knows them, and by the order point where it does not', () => {
    const lines = {
      ages: 2,
      packs: { '1,0,0': 0, '0,9,0': 2 },
      joinPacks: { '1,0,0': 3, '0,9,0': 4 },
      service: 0.95,
    }
    const byDates = (centi: number, line: number[] | null) =>
      adviceAt(centi, {}, { plan: { ...plan, lines }, line, lifeDays: 2 })
    const text = (advice: Advice) =>
      adviceReasons({
        advice,
        plan,
        unit: 'ml',
        packCenti: 3000,
        lead: { meanDays: 2, sdDays: 0 },
        demand,
        level: null,
        dueTodayCenti: 0,
      })
    const none = byDates(0, [1, 0, 0])
    expect(none).toMatchObject({ packs: 0, joinPacks: 3, reason: null, byDates: true, cap: null })
    expect(none.orderPointCenti).toBeGreaterThan(0)
    const some = byDates(900_000, [0, 9, 0])
    expect(some).toMatchObject({ packs: 2, joinPacks: 0, reason: 'below-point', byDates: true })
    expect(text(some).find(reason => reason.code === 'size')?.text).toBe(
      '2 packs of 30 ml: by the dates of what is here and the use to expect, that costs the least of carriage, stock and waste together.',
    )
    const waits = { ...none, joinPacks: 0 }
    expect(text(waits).map(reason => reason.code)).toContain('wait-by-dates')
    expect(text(none).map(reason => reason.code)).not.toContain('wait-by-dates')
    // A job on the board is served whatever the dates say.
    expect(byDates(-4000, [1, 0, 0]).packs).toBe(2)
    for (const line of [null, [7, 7, 0]])
      expect(byDates(0, line)).toMatchObject({
        packs: adviceAt(0, {}, { lifeDays: 2 }).packs,
        byDates: false,
      })
  })

  it('explains every number in a sentence of its own', () => {
    const reasonsOf = (advice: Advice, policy = plan as typeof plan | null, more = {}) =>
      adviceReasons({
        advice,
        plan: policy,
        unit: 'ml',
        packCenti: 3000,
        lead: { meanDays: 3.2, sdDays: 0.9 },
        demand,
        level: null,
        dueTodayCenti: 0,
        ...more,
      })
    expect(reasonsOf(adviceAt(5000), plan, { dueTodayCenti: 1200 })[0]!.text).toMatch(
      /^62 ml on the shelf, less 12 ml for the steps of today: 50 ml/,
    )
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
      '5 ml on the shelf, less 3 ml jobs wait for, less 20 ml booked until the next delivery: 18 ml short.',
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
