import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import {
  carAway,
  carSold,
  doneVisit,
  moveVisit,
  skipVisit,
  undoAct,
  writeEntries,
} from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import type { VisitKey } from '../../../main/services/upkeep/inputs.ts'
import { archivePlan, savePlan } from '../../../main/services/upkeep/plans.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { carryOut, iso } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
let leftAt: string
beforeAll(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
  await carryOut(desk, shop, { treatments: ['topped'] })
  leftAt = iso(desk.now())
})
beforeEach(() => {
  desk.setNow(leftAt)
  return desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.upkeepEntry.deleteMany())
})
afterAll(() => desk.close())

const all = { fromDate: '2026-01-01', toDate: '2028-06-30' }
const open = async () => (await dueVisits(desk, all)).visits.filter(visit => !visit.projected)
const key = ({ planId, ruleOn }: VisitKey) => ({ planId, ruleOn })
const topper = async () => (await open()).find(visit => visit.kind === 'topper')!

describe('a visit', () => {
  it('is skipped, moved and done, and each is taken back to where it was', async () => {
    const before = await topper()
    const { planId, ruleOn } = before
    for (const act of [
      () => skipVisit(desk, { planId, ruleOn, why: 'rain' }),
      () => moveVisit(desk, { planId, ruleOn, to: '2026-11-03' }),
      () => doneVisit(desk, { planId, ruleOn }),
      () => carAway(desk, { vehicleId: shop.vehicles[0]!, from: '2026-09-01', to: '2027-03-01' }),
      () => carSold(desk, { vehicleId: shop.vehicles[0]! }),
    ]) {
      const { actId } = await act()
      expect(await topper()).not.toEqual(before)
      await undoAct(desk, { actId })
      expect(await topper()).toEqual(before)
      await expect(undoAct(desk, { actId })).rejects.toMatchObject({ code: 'missing' })
    }
  })

  it('moves to the day agreed, and the rest counts from the day it is done', async () => {
    const { planId, ruleOn } = await topper()
    await moveVisit(desk, { planId, ruleOn, to: '2026-11-03', why: 'holiday' })
    expect(await topper()).toMatchObject({
      dueOn: '2026-11-03',
      sentence: expect.stringContaining('holiday'),
    })
    desk.setNow('2026-11-05T15:00:00Z')
    await doneVisit(desk, { planId, ruleOn })
    // 5 November 2026 + 182 days.
    expect(await topper()).toMatchObject({ ruleOn: '2027-05-06' })
  })

  it('is refused to the second of two desks', async () => {
    const { planId, ruleOn } = await topper()
    await skipVisit(desk, { planId, ruleOn })
    await expect(skipVisit(desk, { planId, ruleOn })).rejects.toMatchObject({ code: 'stale' })
    await expect(moveVisit(desk, { planId, ruleOn, to: '2026-12-01' })).rejects.toMatchObject({
      code: 'stale',
    })
  })

  it('that a job brought is not taken back here: the job is changed instead', async () => {
    const { planId, ruleOn } = await topper()
    const { id: jobId } = await desk.store.read.job.findFirstOrThrow()
    const line = { vehicleId: shop.vehicles[0]!, planId, what: 'done' as const, ruleOn, onDay: '2026-04-16' }
    await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      writeEntries(tx, { actId: 'by the job', at: desk.now(), who: 'test' }, [line, { ...line, jobId }]),
    )
    await expect(undoAct(desk, { actId: 'by the job' })).rejects.toMatchObject({ code: 'by-a-job' })
    expect(await desk.store.read.upkeepEntry.count({ where: { actId: 'by the job', voidedAt: null } })).toBe(
      2,
    )
  })

  it('leaves an audit line on its car, done and taken back', async () => {
    const { planId, ruleOn, title } = await topper()
    const { actId } = await skipVisit(desk, { planId, ruleOn })
    await undoAct(desk, { actId })
    const [done, back] = await desk.store.read.auditLine.findMany({
      where: {
        entityId: shop.vehicles[0]!,
        act: { startsWith: 'upkeep' },
        detail: { path: '$.actId', equals: actId },
      },
      orderBy: { id: 'asc' },
    })
    expect(done).toMatchObject({ act: 'upkeep', entity: 'vehicle', detail: { words: `${title} skipped` } })
    expect(back).toMatchObject({ act: 'upkeep taken back', detail: { what: 'skipped', lines: 1 } })
  })

  it.each([
    ['date-past', 'to', () => topper().then(v => moveVisit(desk, { ...key(v), to: '2026-04-15' }))],
    ['to-come', 'on', () => topper().then(v => doneVisit(desk, { ...key(v), on: '2026-04-17' }))],
    ['missing', 'planId', () => skipVisit(desk, { planId: 'none', ruleOn: '2026-05-01' })],
    [
      'stale',
      'ruleOn',
      () => topper().then(v => doneVisit(desk, { planId: v.planId, ruleOn: '2026-01-01' })),
    ],
    [
      'missing',
      'vehicleId',
      () => carAway(desk, { vehicleId: 'none', from: '2026-09-01', to: '2026-10-01' }),
    ],
    ['missing', 'vehicleId', () => carSold(desk, { vehicleId: 'none' })],
  ] as const)('is refused as %s by its %s', async (code, field, act) => {
    expect(desk.now()).toBeLessThan(Date.UTC(2026, 3, 17) / 60_000)
    await expect(act()).rejects.toMatchObject({ code, field })
    expect(await desk.store.read.upkeepEntry.count({ where: { jobId: null } })).toBe(0)
  })

  it('may be agreed for today and done today', async () => {
    const visit = await topper()
    await moveVisit(desk, { ...key(visit), to: '2026-04-16' })
    expect(await topper()).toMatchObject({ dueOn: '2026-04-16' })
    await doneVisit(desk, { ...key(visit), on: '2026-04-16' })
    // 16 April 2026 + 182 days.
    expect(await topper()).toMatchObject({ ruleOn: '2026-10-15' })
  })

  it('done without saying which answers the one that was near', async () => {
    const { planId, ruleOn } = await topper()
    desk.setNow(`${ruleOn}T15:00:00Z`)
    await doneVisit(desk, { planId })
    const last = await desk.store.read.upkeepEntry.findFirst({ orderBy: { seq: 'desc' } })
    expect(last).toMatchObject({ what: 'done', ruleOn, onDay: ruleOn })
  })

  it('is never due for a car that was sold', async () => {
    await carSold(desk, { vehicleId: shop.vehicles[0]! })
    expect(await open()).toEqual([])
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    expect(car.soldOn).toBe('2026-04-16')
    expect(car.plans.every(plan => plan.next === null && plan.sentence.includes('sold'))).toBe(true)
  })

  it('of the shop’s own follows its rule, until the plan is ended', async () => {
    const { id } = await savePlan(desk, {
      vehicleId: shop.vehicles[1]!,
      kind: 'other',
      title: 'wheel check',
      rule: 'FREQ=MONTHLY;BYDAY=1MO',
      anchor: { to: 'date', on: '2026-05-01' },
      earlyDays: 3,
      lateDays: 3,
    })
    const visit = (await open()).find(each => each.planId === id)!
    // The first Monday of May 2026 is the 4th.
    expect(visit).toMatchObject({ dueOn: '2026-05-04', title: 'wheel check' })
    await archivePlan(desk, { id, version: 1 })
    expect((await open()).find(each => each.planId === id)).toBeUndefined()
    await expect(
      savePlan(desk, {
        vehicleId: shop.vehicles[1]!,
        kind: 'other',
        title: 'x',
        rule: 'FREQ=SOMETIMES',
        anchor: { to: 'date', on: '2026-05-01' },
        earlyDays: 0,
        lateDays: 0,
      }),
    ).rejects.toMatchObject({ name: 'Refusal' })
  })
})
