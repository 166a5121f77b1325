import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { carTimes, keptPlans, openDays } from '../../../main/services/upkeep/kept.ts'
import { savePlan } from '../../../main/services/upkeep/plans.ts'
import type { Tx } from '../../../main/store/store.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let planId: string
let jobId: string
const car = (i = 0) => shop.vehicles[i] ?? ''
const write = (work: (tx: Tx) => Promise<unknown>) =>
  desk.store.transact({ who: 'test', at: desk.now() }, work)

beforeAll(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
  jobId = (await bookJob(desk, shop, { treatments: ['wash'] })).id
  const plan = {
    kind: 'inspection',
    rule: 'FREQ=YEARLY',
    anchor: { to: 'date', on: '2026-04-28' },
    earlyDays: 3,
    lateDays: 5,
  } as const
  planId = (await savePlan(desk, { ...plan, vehicleId: car(), title: 'first car' })).id
  await savePlan(desk, { ...plan, vehicleId: car(1), title: 'second car' })
})
beforeEach(() => write(tx => tx.upkeepEntry.deleteMany()))
afterAll(() => desk.close())

interface Line {
  what: string
  planId?: string
  ruleOn?: string
  onDay?: string
  toDay?: string
  why?: string
  rule?: string
  jobId?: string
  voidedAt?: number
  vehicleId?: string
}
/** Lines as acts write them, about the first car's plan. */
const lines = (...each: Line[]) =>
  write(tx =>
    tx.upkeepEntry.createMany({
      data: each.map(line => ({ vehicleId: car(), planId, actId: 'act', at: 1, who: 'test', ...line })),
    }),
  )
const kept = async () => {
  const [only] = await keptPlans(desk.store.read, { vehicleId: car() })
  if (!only) throw new Error('the plan is in use')
  return only
}

it('reads what stands about a plan, and leaves out what was taken back', async () => {
  await lines(
    { what: 'done', ruleOn: '2025-04-28', onDay: '2025-05-02' },
    { what: 'done', onDay: '2025-08-01' },
    { what: 'skipped', ruleOn: '2026-04-28', why: 'rain' },
    { what: 'skipped', ruleOn: '2027-04-28', voidedAt: 2 },
    { what: 'moved', ruleOn: '2028-04-28', toDay: '2028-05-03' },
    { what: 'booked', ruleOn: '2029-04-28', jobId },
    { what: 'aimed', ruleOn: '2030-04-28', toDay: '2030-04-20' },
  )
  const { records, booked, aimed } = await kept()
  expect(records).toEqual([
    { what: 'done', on: '2025-05-02', dueOn: '2025-04-28' },
    { what: 'done', on: '2025-08-01', dueOn: null },
    { what: 'skipped', dueOn: '2026-04-28', why: 'rain' },
    { what: 'moved', dueOn: '2028-04-28', to: '2028-05-03' },
  ])
  expect([...booked]).toEqual([['2029-04-28', jobId]])
  expect([...aimed]).toEqual([['2030-04-28', '2030-04-20']])
})

it('aims a visit no more once a day was agreed, unless it is aimed anew', async () => {
  const aimedAt = { what: 'aimed', ruleOn: '2026-04-28', toDay: '2026-04-21' }
  const moved = { what: 'moved', ruleOn: '2026-04-28', toDay: '2026-05-04' }
  await lines(aimedAt, moved)
  expect((await kept()).aimed.size).toBe(0)
  await lines({ ...aimedAt, toDay: '2026-05-05' })
  expect([...(await kept()).aimed]).toEqual([['2026-04-28', '2026-05-05']])
})

it('follows the newest rule, under the anchor and the days of the plan', async () => {
  expect((await kept()).plan).toEqual({
    id: planId,
    kind: 'inspection',
    title: 'first car',
    rule: 'FREQ=YEARLY',
    anchor: { to: 'date', on: '2026-04-28' },
    earlyDays: 3,
    lateDays: 5,
  })
  await lines({ what: 'rule', rule: 'FREQ=MONTHLY' }, { what: 'rule', rule: 'FREQ=WEEKLY' })
  expect((await kept()).plan.rule).toBe('FREQ=WEEKLY')
  await write(tx => tx.upkeepPlan.update({ where: { id: planId }, data: { anchorTo: 'last-done' } }))
  expect((await kept()).plan.anchor).toMatchObject({ to: 'last-done', since: '2026-04-28' })
  await write(tx => tx.upkeepPlan.update({ where: { id: planId }, data: { anchorTo: 'date' } }))
})

it('knows when a car is away or sold, whatever plan it is written beside', async () => {
  await lines(
    { what: 'away', onDay: '2026-11-01', toDay: '2027-03-01', why: 'winter' },
    { what: 'away', onDay: '2027-11-01', toDay: '2028-03-01' },
    { what: 'sold', onDay: '2028-06-01' },
    { what: 'away', onDay: '2029-11-01', toDay: '2030-03-01', voidedAt: 2 },
    { what: 'away', onDay: '2026-05-01', toDay: '2026-06-01', vehicleId: car(1) },
  )
  const times = {
    soldOn: '2028-06-01',
    away: [
      { from: '2026-11-01', to: '2027-03-01', why: 'winter' },
      { from: '2027-11-01', to: '2028-03-01' },
    ],
  }
  expect((await kept()).car).toEqual(times)
  expect(await carTimes(desk.store.read, car())).toEqual(times)
  expect(await carTimes(desk.store.read, car(2))).toEqual({ soldOn: null, away: [] })
})

it('leaves out what is archived: the plan, the car or its owner', async () => {
  const titles = async () => (await keptPlans(desk.store.read)).map(each => each.plan.title).sort()
  expect(await titles()).toEqual(['first car', 'second car'])
  expect((await keptPlans(desk.store.read, { planIds: [planId] })).map(each => each.row.id)).toEqual([planId])
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: car() } })
  for (const set of [
    (archivedAt: number | null) =>
      write(tx => tx.upkeepPlan.update({ where: { id: planId }, data: { archivedAt } })),
    (archivedAt: number | null) =>
      write(tx => tx.vehicle.update({ where: { id: car() }, data: { archivedAt } })),
    (archivedAt: number | null) =>
      write(tx => tx.customer.update({ where: { id: customerId }, data: { archivedAt } })),
  ]) {
    await set(5)
    expect(await titles()).toEqual(['second car'])
    await set(null)
  }
})

it('is open by the week, and by what was said of single days before it', async () => {
  await write(tx =>
    tx.hoursException.createMany({
      data: [
        { date: '2026-04-15', hours: [] },
        { date: '2026-04-19', hours: [{ from: 480, to: 600 }] },
      ],
    }),
  )
  const isOpen = await openDays(desk.store.read)
  // Wednesday closed for once, Sunday open for once; Saturday and Sunday as in every week.
  expect(['2026-04-15', '2026-04-19', '2026-04-18', '2026-04-26'].map(isOpen)).toEqual([
    false,
    true,
    true,
    false,
  ])
})
