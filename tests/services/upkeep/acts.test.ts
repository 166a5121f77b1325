import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  carAway,
  carSold,
  doneVisit,
  moveVisit,
  skipVisit,
  undoAct,
} from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
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
