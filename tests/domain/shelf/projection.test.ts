import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BookedDraw,
  type Delivery,
  type Holding,
  projectStock,
  takeFirstExpired,
} from '../../../main/domain/shelf/index.ts'
import type { ProjectionInput } from '../../../main/domain/shelf/projection.ts'
import { followStock } from '../../../main/domain/shelf/track.ts'
import { normalDraw, poissonDraw, seeded } from '../../bench/simulation/random.ts'
import { holdings, noUseAhead, TODAY } from './arbitraries.ts'

const draw = (inDays: number, centi: number, part: Partial<BookedDraw> = {}): BookedDraw => ({
  jobId: `job ${inDays}`,
  stepId: `step ${inDays}`,
  day: TODAY + inDays,
  at: inDays * 1440,
  centi,
  sdCenti: 0,
  ...part,
})
const delivery = (inDays: number, centi: number, spread = 0): Delivery => ({
  orderId: 'o',
  earlyDay: TODAY + inDays - spread,
  likelyDay: TODAY + inDays,
  lateDay: TODAY + inDays + spread,
  centi,
  lastDay: null,
})
const input = (part: Partial<ProjectionInput>): ProjectionInput => ({
  today: TODAY,
  days: 10,
  holdings: [{ lotId: 'a', centi: 10_000, opened: false, lastDay: null }],
  booked: [],
  deliveries: [],
  unforeseen: noUseAhead(10),
  shopOpen: () => true,
  ...part,
})
/** Unforeseen use of the same mean and variance on every open day. */
const steady = (mean: number, variance: number, days = 10) => ({
  meanCenti: Array.from({ length: days + 1 }, (_, k) => k * mean),
  variance: Array.from({ length: days + 1 }, (_, k) => k * variance),
})

describe('the course of the stock', () => {
  it('is that of drawing first expired first each day, lot by lot', () => {
    fc.assert(
      fc.property(
        holdings,
        fc.array(fc.integer({ min: 0, max: 20_000 }), { minLength: 15, maxLength: 15 }),
        fc.option(
          fc.record({ day: fc.integer({ min: 1, max: 14 }), centi: fc.integer({ min: 1, max: 90_000 }) }),
        ),
        (list, uses, order) => {
          const use = Float64Array.from([0, ...uses])
          const arrivals =
            order === null ? [] : [{ day: TODAY + order.day, centi: order.centi, lastDay: TODAY + 25 }]
          const got = followStock(list, arrivals, TODAY, use)
          // Slowly and apart: a list of lots, the published rule, and a count of what jobs wait for.
          let lots: Holding[] = list.filter(lot => lot.lastDay === null || lot.lastDay > TODAY)
          let waiting = 0
          uses.forEach((centi, i) => {
            const day = TODAY + i + 1
            const take = takeFirstExpired(lots, centi, day)
            for (const { lotId, centi: taken } of take.use)
              lots = lots.map(lot => (lot.lotId === lotId ? { ...lot, centi: lot.centi - taken } : lot))
            waiting += take.shortCenti
            const gone = lots.filter(lot => lot.lastDay !== null && lot.lastDay <= day)
            lots = lots.filter(lot => !gone.includes(lot))
            for (const arrival of arrivals.filter(entry => entry.day === day)) {
              const served = Math.min(waiting, arrival.centi)
              waiting -= served
              lots.push({
                lotId: 'z',
                centi: arrival.centi - served,
                opened: false,
                lastDay: arrival.lastDay,
              })
            }
            const there = lots.reduce((sum, lot) => sum + lot.centi, 0)
            expect(got.stockCenti[i + 1]).toBeCloseTo(there - waiting, 6)
            expect(got.expiredCenti[i + 1]).toBeCloseTo(
              gone.reduce((sum, lot) => sum + lot.centi, 0),
              6,
            )
          })
        },
      ),
    )
  })
})

describe('the projection', () => {
  it('adds up: what is here, comes and goes each day', () => {
    fc.assert(
      fc.property(
        holdings,
        fc.array(fc.tuple(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 9000 })), {
          maxLength: 8,
        }),
        fc.integer({ min: 0, max: 3000 }),
        (list, booked, mean) => {
          const got = projectStock(
            input({
              holdings: list,
              booked: booked.map(([inDays, centi]) => draw(inDays, centi)),
              deliveries: [delivery(4, 7000)],
              unforeseen: steady(mean, mean * 500),
            }),
          )
          for (let i = 1; i <= 10; i++) {
            const change = got.arriving[i]! - got.booked[i]! - got.unforeseen[i]! - got.expiring[i]!
            expect(got.likely[i]! - got.likely[i - 1]!).toBeCloseTo(change, 6)
          }
        },
      ),
    )
  })

  it('is a line where nothing is uncertain, and a band that widens where it is', () => {
    const sure = projectStock(input({ booked: [draw(3, 4000)] }))
    expect([...sure.low]).toEqual([...sure.likely])
    expect([...sure.high]).toEqual([...sure.likely])
    const unsure = projectStock(
      input({ unforeseen: steady(300, 200_000), booked: [draw(3, 4000, { sdCenti: 500 })] }),
    )
    const width = unsure.high.map((high, i) => high - unsure.low[i]!)
    for (let i = 2; i <= 10; i++) expect(width[i]!).toBeGreaterThan(width[i - 1]!)
    for (let i = 1; i <= 10; i++) {
      expect(unsure.low[i]!).toBeLessThanOrEqual(unsure.likely[i]!)
      expect(unsure.high[i]!).toBeGreaterThanOrEqual(unsure.likely[i]!)
    }
  })

  it('has a band that holds nine in ten on each side, played out', () => {
    const random = seeded(31)
    const booked = [draw(2, 2500, { sdCenti: 400 }), draw(6, 3000, { sdCenti: 300 })]
    const rate = 0.4
    const size = 900
    const unforeseen = steady(rate * size, rate * size ** 2)
    const got = projectStock(
      input({ booked, unforeseen, holdings: [{ lotId: 'a', centi: 20_000, opened: false, lastDay: null }] }),
    )
    for (const day of [3, 7, 10]) {
      let below = 0
      let above = 0
      const runs = 8000
      for (let run = 0; run < runs; run++) {
        let stock = 20_000
        for (const entry of booked)
          if (entry.day <= TODAY + day) stock -= entry.centi + normalDraw(random) * entry.sdCenti
        stock -= poissonDraw(random, rate * day) * size
        if (stock < got.low[day]!) below++
        if (stock > got.high[day]!) above++
      }
      expect(below / runs).toBeLessThan(0.13)
      expect(below / runs).toBeGreaterThan(0.03)
      expect(above / runs).toBeLessThan(0.17)
    }
  })

  it('draws nothing on days the shop is closed', () => {
    const got = projectStock(input({ unforeseen: steady(300, 0), shopOpen: day => (day - TODAY) % 7 !== 3 }))
    expect(got.unforeseen[3]).toBe(0)
    expect(got.likely[10]).toBeCloseTo(10_000 - 8 * 300, 6)
  })

  it('names the moment it runs dry and the job it hits, by the hour', () => {
    const booked = [
      draw(2, 6000, { jobId: 'early' }),
      draw(4, 3000, { jobId: 'fits', at: 4 * 1440 + 60 }),
      draw(4, 3000, { jobId: 'hit', at: 4 * 1440 + 300, stepId: 'coat' }),
      draw(5, 500, { jobId: 'after' }),
    ]
    const { dry, dryEarly } = projectStock(input({ booked }))
    expect(dry).toEqual({
      day: TODAY + 4,
      at: 4 * 1440 + 300,
      jobId: 'hit',
      stepId: 'coat',
      missingCenti: 2000,
    })
    expect(dryEarly).toEqual(dry)
    expect(projectStock(input({ booked, deliveries: [delivery(3, 2500)] })).dry).toBeNull()
    // A parcel of the day itself comes too late for it, and a late one leaves the bad case short.
    expect(projectStock(input({ booked, deliveries: [delivery(4, 3000)] })).dry).toEqual(dry)
    const late = projectStock(input({ booked: booked.slice(0, 3), deliveries: [delivery(3, 2000, 2)] }))
    expect(late.dry).toBeNull()
    expect(late.dryEarly).toMatchObject({ jobId: 'hit' })
  })

  it('names the next job where unbooked use empties the shelf first', () => {
    const got = projectStock(
      input({ unforeseen: steady(2500, 0), booked: [draw(8, 1000, { jobId: 'hit' })] }),
    )
    expect(got.dry).toEqual({ day: TODAY + 5, at: null, jobId: 'hit', stepId: 'step 8', missingCenti: 1000 })
    expect(projectStock(input({ unforeseen: steady(2500, 0) })).dry).toMatchObject({
      jobId: null,
      missingCenti: 0,
    })
  })

  it('throws away what is past its last day, and less of it the more is used', () => {
    const holding = { lotId: 'a', centi: 10_000, opened: false, lastDay: TODAY + 4 }
    const idle = projectStock(input({ holdings: [holding] }))
    expect(idle.expiring[4]).toBe(10_000)
    const used = projectStock(input({ holdings: [holding], booked: [draw(4, 7000)] }))
    expect(used.expiring[4]).toBe(3000)
    expect(used.likely[5]).toBe(0)
  })
})
