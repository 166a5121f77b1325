import { describe, expect, it } from 'vitest'
import { dateOfDay } from '../../../main/domain/calendar/index.ts'
import { availabilityOf, projectStock, type WantedDraw } from '../../../main/domain/shelf/index.ts'
import type { ProjectionInput } from '../../../main/domain/shelf/projection.ts'
import { noUseAhead, TODAY } from './arbitraries.ts'

const date = (inDays: number) => dateOfDay(TODAY + inDays)
const projection = (part: Partial<ProjectionInput>) =>
  projectStock({
    today: TODAY,
    days: 20,
    holdings: [{ lotId: 'a', centi: 10_000, opened: false, lastDay: null }],
    booked: [],
    deliveries: [],
    unforeseen: noUseAhead(20),
    shopOpen: () => true,
    ...part,
  })
const booked = (inDays: number, centi: number) => ({
  jobId: 'other',
  stepId: 's',
  day: TODAY + inDays,
  at: inDays * 1440,
  centi,
  sdCenti: 0,
})
const want = (inDays: number, centi: number, part: Partial<WantedDraw> = {}): WantedDraw => ({
  productId: 'p',
  holdsUp: true,
  centi,
  day: TODAY + inDays,
  projection: projection({}),
  reorderDay: TODAY + 7,
  ...part,
})

describe('at the front desk', () => {
  it('a draw can be promised from what nobody else has booked', () => {
    const got = availabilityOf([want(3, 10_000)])
    expect(got).toMatchObject({ ok: true, couldBeOn: date(3) })
    expect(got.draws[0]).toMatchObject({ state: 'there', missingCenti: 0 })
  })

  it('does not take what a later job has booked before an order could replace it', () => {
    const shelf = projection({ booked: [booked(6, 8000)] })
    const got = availabilityOf([want(3, 5000, { projection: shelf })])
    expect(got.ok).toBe(false)
    expect(got.draws[0]).toMatchObject({ state: 'short', missingCenti: 3000, couldBeOn: date(8) })
    // A job after the reorder can be ordered for.
    expect(
      availabilityOf([want(3, 5000, { projection: projection({ booked: [booked(9, 8000)] }) })]).ok,
    ).toBe(true)
  })

  it('says when it must be ordered today', () => {
    const [draw] = availabilityOf([want(9, 15_000)]).draws
    expect(draw).toMatchObject({ state: 'order', missingCenti: 5000, couldBeOn: date(9) })
    // Goods that arrive on the very day serve only from the next.
    expect(availabilityOf([want(7, 15_000)]).draws[0]).toMatchObject({ state: 'short', couldBeOn: date(8) })
  })

  it('counts on a delivery under way from the day after its late edge', () => {
    const parcel = {
      orderId: 'o',
      earlyDay: TODAY + 2,
      likelyDay: TODAY + 3,
      lateDay: TODAY + 5,
      centi: 6000,
      lastDay: null,
    }
    const shelf = projection({ deliveries: [parcel], booked: [booked(1, 10_000)] })
    expect(availabilityOf([want(4, 5000, { projection: shelf })]).draws[0]).toMatchObject({
      state: 'short',
      couldBeOn: date(6),
    })
  })

  it('puts draws of one product together, and takes the latest date of several', () => {
    const two = [want(3, 6000), want(4, 6000)]
    expect(availabilityOf(two).draws).toMatchObject([{ state: 'short', missingCenti: 2000 }])
    const other = want(3, 99_000, { productId: 'q', reorderDay: TODAY + 12 })
    expect(availabilityOf([want(3, 100), other])).toMatchObject({ ok: false, couldBeOn: date(13) })
  })

  it('says so when nobody sells it', () => {
    const got = availabilityOf([want(3, 99_000, { reorderDay: null })])
    expect(got).toMatchObject({ ok: false, couldBeOn: null })
  })

  it('is not held up by what the shop can fetch while the car is there', () => {
    const pads = want(3, 99_000, { productId: 'pads', holdsUp: false, reorderDay: TODAY + 12 })
    const got = availabilityOf([want(3, 100), pads])
    expect(got).toMatchObject({ ok: true, couldBeOn: date(3) })
    expect(got.draws[1]).toMatchObject({
      state: 'short',
      holdsUp: false,
      day: TODAY + 3,
      couldBeOn: date(13),
    })
    // Not even where nobody sells it.
    expect(availabilityOf([want(3, 100), { ...pads, reorderDay: null }])).toMatchObject({ ok: true })
    // What does hold up decides alone when it could be.
    expect(availabilityOf([want(3, 99_000), pads])).toMatchObject({ ok: false, couldBeOn: date(8) })
  })
})
