import { beforeEach, describe, expect, it } from 'vitest'
import { instantOf } from '../../../main/domain/calendar/instants.ts'
import { closeOfDay } from '../../../main/services/shelf/closeOfDay.ts'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { proposeDrafts } from '../../../main/services/shelf/orders/propose.ts'
import { sendOrder } from '../../../main/services/shelf/orders/send.ts'
import { getRules, saveRules } from '../../../main/services/shelf/shelfRules.ts'
import { countBottle, takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { lotRows } from '../../../main/store/lotRows.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const productOf = async (id: string) => (await closeOfDay(desk)).products.find(product => product.id === id)!

describe('the projection of the close of day', () => {
  it('takes off what finished and running steps drew before it looks ahead', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 4)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const before = await productOf(shop.coating)
    // 200 ml by the ledger; 30 of the coat just laid and 20 of the one that follows today are as good as gone.
    expect(before.onHand).toBe(200)
    expect(before.projection.days[0]!.likely).toBe(150)
    await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ productId: shop.coating, lotId: null, amount: 36, how: 'corrected' }],
    })
    const after = await productOf(shop.coating)
    expect(after.onHand).toBe(164)
    expect(after.projection.days[0]!.likely).toBe(144)
  })

  it('proposes no order of what a finished step used beyond the ledger: what is there has to be counted first', async () => {
    const booked = await book(desk, shop)
    const { position } = (
      await desk.store.read.stepDraw.findMany({
        where: { jobId: booked.jobId },
        orderBy: { position: 'asc' },
      })
    )[0]!
    const orders = async () => (await closeOfDay(desk)).orders.flatMap(order => order.lines)
    expect(await orders()).toMatchObject([{ productId: shop.coating }])
    await workUntil(desk, booked, position)
    expect(await orders()).toEqual([])
  })

  it('is a band around what is likely, and names the job that a dry shelf hits', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const jobs = []
    for (const vehicle of [0, 1, 2]) jobs.push(await book(desk, shop, vehicle))
    const view = await closeOfDay(desk)
    const { projection, rank } = view.products.find(product => product.id === shop.coating)!
    for (const day of projection.days) {
      expect(day.low).toBeLessThanOrEqual(day.likely)
      expect(day.likely).toBeLessThanOrEqual(day.high)
    }
    expect(projection.days.some(day => day.low < day.high)).toBe(true)
    // Three cars at 50 ml each, 100 ml on the shelf: the third lacks its coat.
    const rows = await desk.store.read.jobStep.findMany({
      where: { name: 'First layer' },
      orderBy: { startAt: 'asc' },
    })
    const third = await desk.store.read.job.findUniqueOrThrow({ where: { id: rows[2]!.jobId } })
    expect(projection.runsDry).toMatchObject({
      jobId: third.id,
      words: expect.stringContaining(`(job ${third.number}): 30 ml short.`),
    })
    expect(rank).toBe(0)
    expect(view.warnings.filter(warning => warning.kind === 'runsDry')).toMatchObject([
      { productIds: [shop.coating], words: projection.runsDry!.words },
    ])
  })

  it('lets what is under way arrive, and bottles pass their date', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await stock(desk, shop.topper, shop.sizes.topper, 1, { expiresOn: '2026-04-25' })
    for (const vehicle of [0, 1]) await book(desk, shop, vehicle)
    const [draft] = await proposeDrafts(desk)
    await sendOrder(desk, { id: draft!.id, version: draft!.version, how: 'paper' })
    const view = await closeOfDay(desk)
    const coating = view.products.find(product => product.id === shop.coating)!
    expect(coating.advice.kind).toBe('onTheWay')
    expect(coating.projection.deliveries).toMatchObject([
      { amount: draft!.lines[0]!.packAmount, orderNumber: 1 },
    ])
    const arrives = coating.projection.days.find(day => day.arrives > 0)!
    expect(arrives).toMatchObject({ date: coating.projection.deliveries[0]!.date, arrives: 50 })
    expect(view.orders).toEqual([])
    const topper = view.products.find(product => product.id === shop.topper)!
    expect(topper.projection.days.find(day => day.expires > 0)).toMatchObject({
      date: '2026-04-25',
      expires: 500,
    })
    expect(view.warnings.find(warning => warning.kind === 'expiresSoon')).toMatchObject({
      productIds: [shop.topper],
    })
  })
})

describe('the advice of the close of day', () => {
  it('orders for booked jobs even where nothing is on record, one order a supplier', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    for (const vehicle of [0, 1]) await book(desk, shop, vehicle)
    const view = await closeOfDay(desk)
    const { advice } = view.products.find(product => product.id === shop.coating)!
    expect(advice).toMatchObject({
      kind: 'order',
      packs: 1,
      supplierName: 'Carrow Supply',
      offerId: shop.offers.coating,
    })
    expect(advice.words[0]).toBe('Order 1 pack (50 ml) of Ovrel Two today: booked jobs need it.')
    expect(advice.facts!.position).toBe(-50)
    expect(view.orders).toMatchObject([
      {
        supplierId: shop.supplier,
        goodsMinor: 4_800,
        carriageMinor: 900,
        totalMinor: 5_700,
        // Sent on a Wednesday before the cut-off, three working days: Monday.
        expectedOn: '2026-04-20',
        lines: [{ packs: 1, lineMinor: 4_800 }],
      },
    ])
  })

  it('asks to look first where finished steps used more than the ledger knows', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const booked = await book(desk, shop)
    await countBottle(desk, { productId: shop.coating, lotId: lotId!, counted: 10, reason: 'spilt' })
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    await workUntil(desk, booked, position)
    const { advice, projection } = await productOf(shop.coating)
    expect(advice.kind).toBe('check')
    expect(advice.words[0]).toContain('Finished steps used 20 ml more of Ovrel Two than the ledger knows of')
    // 10 ml were there, 30 used and 20 still wanted today: nothing is left, and the second coat has nothing.
    expect(projection.days[0]!.likely).toBe(0)
    expect(projection.runsDry).toMatchObject({
      date: '2026-04-15',
      words: expect.stringContaining('"Second layer"'),
    })
  })

  it('learns from the ledger: order point, safety stock and size, each with its sentence, kept for a week', async () => {
    const { regimeUsed: _, ...rules } = await getRules(desk)
    await saveRules(desk, { ...rules, services: { ...rules.services, usual: 0.995 } })
    // Ten months of use that nobody books: 40 ml every working day but Wednesdays.
    desk.setNow('2025-06-02T12:00:00Z')
    const lots = await stock(desk, shop.topper, shop.sizes.topper, 20, { costMinor: 40_000 })
    let left = 20 * 500
    for (let day = 0; day < 310 && left > 600; day++) {
      const at = Temporal.Instant.from('2025-06-02T20:00:00Z').add({ hours: 24 * day })
      const weekday = at.toZonedDateTimeISO('America/New_York').dayOfWeek
      if (weekday > 5 || weekday === 3) continue
      desk.setNow(at.toString())
      const lotId = lots[Math.floor((20 * 500 - left) / 500)]!
      const inLot = 500 - ((20 * 500 - left) % 500)
      const amount = Math.min(40, inLot)
      await takeStock(desk, { productId: shop.topper, lotId, amount, reason: 'walk-in' })
      left -= amount
    }
    const { advice } = await productOf(shop.topper)
    const facts = advice.facts!
    // Four days of five at 40 ml; Saturdays are open and quiet. Some days draw the rest of a bottle: a little less.
    expect(facts.usePerDay).toBeGreaterThan(22)
    expect(facts.usePerDay).toBeLessThan(32)
    expect(facts.orderPoint).toBeGreaterThan(0)
    expect(facts.safetyStock).toBeCloseTo(facts.orderPoint - facts.expectedUnforeseen, 1)
    expect(facts.reached).toBeGreaterThanOrEqual(facts.service)
    expect(facts.sizes.filter(size => size.best)).toHaveLength(1)
    const best = facts.sizes.find(size => size.best)!
    for (const size of facts.sizes) expect(best.totalMinor).toBeLessThanOrEqual(size.totalMinor + 0.01)
    expect(facts.within.at(-1)!.share).toBeGreaterThan(0.99)
    const names = facts.sentences.map(sentence => sentence.name)
    for (const name of ['position', 'cover', 'demand', 'safety-stock', 'order-point', 'lasts'])
      expect(names).toContain(name)
    for (const sentence of facts.sentences) expect(sentence.words).toMatch(/^[A-Z0-9-].*[.]$/)
    const plan = await desk.store.read.shelfPlan.findUniqueOrThrow({ where: { productId: shop.topper } })
    desk.setNow(instantOf(desk.now() + 1440).toString())
    await closeOfDay(desk)
    expect(await desk.store.read.shelfPlan.findUniqueOrThrow({ where: { productId: shop.topper } })).toEqual(
      plan,
    )
    desk.setNow(instantOf(desk.now() + 8 * 1440).toString())
    await closeOfDay(desk)
    const later = await desk.store.read.shelfPlan.findUniqueOrThrow({ where: { productId: shop.topper } })
    expect(later.plannedOn > plan.plannedOn).toBe(true)
  })

  it('says what has been done and what is left to confirm', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 2)
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    const before = await closeOfDay(desk)
    expect(before.stepsToConfirm).toMatchObject([
      {
        plate: 'KFR 204',
        stepName: 'First layer',
        crew: [expect.any(String)],
        draws: [
          { productName: 'Ovrel Two', expected: 30, spread: 4, proposed: 30, lotId, tap: 2, canWeigh: true },
        ],
      },
    ])
    expect(before.done).toEqual({ stepsConfirmed: 0, counts: 0, ordersSent: 0 })
    await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ productId: shop.coating, lotId: lotId!, amount: 30, how: 'proposed' }],
    })
    await countBottle(desk, { productId: shop.coating, lotId: lotId!, counted: 18, reason: 'looked low' })
    const after = await closeOfDay(desk)
    expect(after.stepsToConfirm).toEqual([])
    expect(after.done).toEqual({ stepsConfirmed: 1, counts: 1, ordersSent: 0 })
    expect(after.products.find(product => product.id === shop.coating)!.lastCountedAt).toBe(desk.now())
    expect((await lotRows(desk.store.read, [shop.coating])).find(row => row.id === lotId)!.centi).toBe(1800)
  })
})
