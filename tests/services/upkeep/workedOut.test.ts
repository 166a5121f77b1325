import { beforeEach, describe, expect, it } from 'vitest'
import { createFeed, feedFile } from '../../../main/services/reminders/feeds.ts'
import { batch } from '../../../main/services/reminders/messages.ts'
import { prepareBatch } from '../../../main/services/reminders/prepare.ts'
import { resultsSummary } from '../../../main/services/reminders/results.ts'
import { carAway, doneVisit } from '../../../main/services/upkeep/acts.ts'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { applySpread, previewSpread } from '../../../main/services/upkeep/spread.ts'
import { upkeepYear } from '../../../main/services/upkeep/year.ts'
import { change, duePlan, type ReminderDesk, reminderDesk } from '../reminders/reminderDesk.ts'
import { agree, carryOut } from './coatedCar.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
let good: string
beforeEach(async () => {
  ;({ desk, shop } = await reminderDesk(1))
  await agree(desk, shop.vehicles[1]!)
  good = await duePlan(desk, shop.vehicles[1]!)
})

/** A plan as an older version, or another hand, could have left it in the database, past every check. */
async function stored(rule: string, anchorOn: string, anchorTo = 'date', vehicleId = shop.vehicles[0]!) {
  const row = { vehicleId, kind: 'other', title: 'odd plan', rule, anchorOn, anchorTo }
  const rest = { anchorEvent: '', earlyDays: 3, lateDays: 3, createdAt: desk.now() }
  const { id } = await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.upkeepPlan.create({ data: { ...row, ...rest } }),
  )
  return id
}

const year = { fromDate: '2026-01-01', toDate: '2027-04-14' }

/** Opens everything that shows many cars at once; each must still tell of the good one. */
async function everyScreen() {
  const due = await dueVisits(desk, year)
  expect(due.visits.map(visit => visit.planId)).toContain(good)
  const weeks = (await upkeepYear(desk)).weeks
  expect(weeks.reduce((sum, week) => sum + week.asDue, 0)).toBeGreaterThan(0)
  await previewSpread(desk)
  expect((await prepareBatch(desk)).written).toBe(1)
  const messages = await batch(desk)
  expect(messages.messages.map(message => message.planId)).toEqual([good])
  await resultsSummary(desk)
  const { path } = await createFeed(desk, { name: 'telephone', details: true })
  const file = await feedFile(desk, path.slice('/feed/'.length, -'.ics'.length))
  expect(file).toContain('LOW 771')
  return { due, failed: messages.failed, file: file ?? '' }
}

describe('a stored plan that cannot be worked out', () => {
  it.each([
    ['FREQ=YEARLY;INTERVAL=9000', '2026-04-20', 'last-done'],
    ['FREQ=DAILY;BYHOUR=9,17', '2026-04-20', 'date'],
    ['FREQ=HOURLY', '2026-04-20', 'date'],
    ['FREQ=SOMETIMES', '2026-04-20', 'date'],
    ['FREQ=YEARLY', 'the day it was bought', 'date'],
  ])('%s from %s is named with its reason and takes nothing else down', async (rule, anchorOn, anchorTo) => {
    const planId = await stored(rule, anchorOn, anchorTo)
    const { due, failed, file } = await everyScreen()
    const line = {
      planId,
      plate: 'KFR 204',
      title: 'odd plan',
      why: expect.stringMatching(/^It cannot be worked out: ./),
    }
    expect(due.failed).toMatchObject([line])
    expect(failed).toMatchObject([line])
    expect((await upkeepYear(desk)).failed).toMatchObject([line])
    expect((await previewSpread(desk))!.failed).toMatchObject([line])
    expect(file.replace(/\r\n /g, '')).toContain('odd plan: KFR 204 (Ines Vale) cannot be worked out')
    const car = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    expect(car.plans).toMatchObject([
      { id: planId, next: null, sentence: expect.stringContaining('cannot be worked out') },
    ])
  })

  it.each([
    ['FREQ=WEEKLY;BYDAY=MO,TU', '1950-01-02'],
    ['FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR', '2000-01-03'],
    ['FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30', '2026-01-01'],
    ['FREQ=DAILY', '1950-01-01'],
    ['FREQ=DAILY', '9999-12-30'],
  ])('%s from %s keeps nobody waiting', async (rule, anchorOn) => {
    await stored(rule, anchorOn)
    await everyScreen()
  })

  it('does not hold up the handover of its car, nor its visit being entered as done', async () => {
    const planId = await stored('FREQ=YEARLY;INTERVAL=9000', '2026-04-20', 'last-done')
    await doneVisit(desk, { planId })
    await carryOut(desk, shop, { treatments: ['topped'] })
    const { plans } = await carUpkeep(desk, { vehicleId: shop.vehicles[0]! })
    expect(plans.map(plan => plan.kind)).toContain('topper')
  })

  it('leaves the spread to the others', async () => {
    await stored('FREQ=SOMETIMES', '2026-04-20')
    // Room for a visit or two a week.
    await change(desk, { roomShare: 0.03 })
    for (let i = 0; i < 6; i++) await duePlan(desk, shop.vehicles[2]!, '2026-06-10')
    expect((await applySpread(desk)).words).toMatch(/aimed at other weeks$/)
  })
})

it('a car away until the end of the calendar is answered for, and so is everybody else', async () => {
  const vehicleId = shop.vehicles[0]!
  await duePlan(desk, vehicleId)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.upkeepEntry.create({
      data: {
        actId: 'a',
        vehicleId,
        what: 'away',
        onDay: '2026-01-01',
        toDay: '9999-12-31',
        at: desk.now(),
        who: 'test',
      },
    }),
  )
  await everyScreen()
  expect((await carUpkeep(desk, { vehicleId })).plans).toHaveLength(1)
  await expect(
    (async () => carAway(desk, { vehicleId, from: '2026-04-15', to: '2099-01-01' }))(),
  ).rejects.toMatchObject({
    field: 'away.0.to',
  })
})
