import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  carAway,
  carSold,
  doneVisit,
  moveVisit,
  skipVisit,
  undoAct,
} from '../../../main/services/upkeep/acts.ts'
import { acceptCarProposal, carUpkeep } from '../../../main/services/upkeep/car.ts'
import { saveExposure } from '../../../main/services/upkeep/exposure.ts'
import { inspect } from '../../../main/services/upkeep/inspect.ts'
import { archivePlan, savePlan } from '../../../main/services/upkeep/plans.ts'
import { dueVisits } from '../../../main/services/upkeep/visits.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { carryOut } from './coatedCar.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})
afterEach(() => desk.close())

const all = { fromDate: '2026-01-01', toDate: '2028-06-30' }
const open = async () => (await dueVisits(desk, all)).visits.filter(visit => !visit.projected)
const topper = async () => (await open()).find(visit => visit.kind === 'topper')!

describe('a coating handed over', () => {
  it('begins the four plans, from the day it left, with the layers that were really laid', async () => {
    await carryOut(desk, shop, { treatments: ['topped'] })
    const visits = await open()
    expect(visits.map(visit => visit.kind).sort()).toEqual(['check-up', 'first-wash', 'inspection', 'topper'])
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    expect(car.layers.map(layer => [layer.stage, layer.productName])).toEqual([
      ['topper', 'Ovrel Veil'],
      ['coat', 'Ovrel Two'],
    ])
    // Half a year for a topper: common practice, no source. 16 April 2026 + 182 days = 15 October 2026.
    expect(car.interval).toMatchObject({ productDays: 182, productMark: 'common practice', days: 182 })
    expect(car.timeline.map(entry => entry.kind)).toEqual(expect.arrayContaining(['coat', 'topper', 'job']))
    const due = visits.find(visit => visit.kind === 'topper')!
    const job = await desk.store.read.job.findFirstOrThrow()
    const leftOn = Temporal.Instant.fromEpochMilliseconds(job.leftAt! * 60_000)
      .toZonedDateTimeISO('America/New_York')
      .toPlainDate()
    const days = leftOn.until(due.ruleOn, { largestUnit: 'days' }).days
    expect(days).toBe(182)
    expect(due.sentence).toContain('counted from the coating')
  })

  it('is not begun by a wash', async () => {
    await carryOut(desk, shop, { treatments: ['wash'] })
    expect(await open()).toEqual([])
  })

  it('begins anew with the next coating: nothing is due twice', async () => {
    await carryOut(desk, shop, { treatments: ['topped'] })
    const first = await topper()
    desk.setNow('2026-07-01T12:00:00Z')
    await carryOut(desk, shop, { treatments: ['topped'] })
    const visits = await open()
    expect(visits).toHaveLength(4)
    expect(visits.find(visit => visit.kind === 'topper')!.dueOn > first.dueOn).toBe(true)
  })
})

describe('a visit', () => {
  beforeEach(() => carryOut(desk, shop, { treatments: ['topped'] }).then(() => {}))

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

describe('what inspections and exposure say', () => {
  beforeEach(() => carryOut(desk, shop, { treatments: ['topped'] }).then(() => {}))

  it('never moves a due day by itself, but by a proposal the desk accepts', async () => {
    const vehicleId = shop.vehicles[0]!
    const before = await topper()
    const car = await carUpkeep(desk, { vehicleId })
    expect(car.proposals).toEqual([])
    await saveExposure(desk, { vehicleId, choices: { kept: 'outside' }, version: 0 })
    desk.setNow('2026-08-20T12:00:00Z')
    await inspect(desk, { layerId: car.layers[0]!.id, working: false, note: 'beading gone on the bonnet' })
    expect((await topper()).dueOn).toBe(before.dueOn)
    const after = await carUpkeep(desk, { vehicleId })
    expect(after.life).toMatchObject({ lives: 1, ended: 1 })
    const visit = after.proposals.find(each => each.what === 'next-visit')!
    expect(visit).toMatchObject({ toOn: '2026-08-20', fromOn: before.dueOn })
    const { actId } = await acceptCarProposal(desk, visit)
    expect((await topper()).dueOn).toBe('2026-08-20')
    await undoAct(desk, { actId })
    expect((await topper()).dueOn).toBe(before.dueOn)
    const interval = after.proposals.find(each => each.what === 'interval')!
    await acceptCarProposal(desk, interval)
    expect((await topper()).dueOn).toBe(interval.toOn)
    await expect(acceptCarProposal(desk, { ...interval, toOn: '2030-01-01' })).rejects.toMatchObject({
      code: 'stale',
    })
  })

  it('is refused where it contradicts an earlier look', async () => {
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    const layerId = car.layers[0]!.id
    desk.setNow('2026-09-20T12:00:00Z')
    await inspect(desk, { layerId, working: false, on: '2026-08-01' })
    await expect(inspect(desk, { layerId, working: true, on: '2026-09-01' })).rejects.toMatchObject({
      code: 'working-after-gone',
    })
    await expect(inspect(desk, { layerId, working: true, on: '2026-01-01' })).rejects.toMatchObject({
      field: 'on',
    })
  })
})
