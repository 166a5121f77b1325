import { beforeEach, expect, it } from 'vitest'
import { speaking } from '../../../main/services/desk/speaking.ts'
import { moveVisit, undoAct, writeEntries } from '../../../main/services/upkeep/acts.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import { applySpread, previewSpread } from '../../../main/services/upkeep/spread.ts'
import { upkeepYear } from '../../../main/services/upkeep/year.ts'
import { bookJob } from '../bookJob.ts'
import { change, duePlan, type ReminderDesk, reminderDesk } from '../reminders/reminderDesk.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
beforeEach(async () => {
  ;({ desk, shop } = await reminderDesk(1))
})

it('counts each visit in the week it is due, and what is overdue in the first', async () => {
  await duePlan(desk, shop.vehicles[0]!, '2026-04-14')
  await duePlan(desk, shop.vehicles[1]!, '2026-02-02')
  await duePlan(desk, shop.vehicles[2]!, '2026-04-20')
  const { weeks, today } = await upkeepYear(desk)
  expect(today).toBe('2026-04-15')
  expect(weeks).toHaveLength(52)
  // ISO 8601: 13 April 2026 is the Monday of week 16.
  expect(weeks[0]).toMatchObject({ beginsOn: '2026-04-13', week: 16, asDue: 2, planned: 2 })
  expect(weeks[1]).toMatchObject({ beginsOn: '2026-04-20', week: 17, asDue: 1, planned: 1 })
  // And their next ones, a year on, as far as they fall into it.
  expect(weeks.reduce((sum, week) => sum + week.asDue, 0)).toBe(4)
})

it('begins its weeks where the shop does: a Sunday’s visit is of the week after it', async () => {
  // A Sunday the shop opens on; on a closed day the visit would be due on the Saturday.
  const open = { date: '2026-04-19', hours: [{ from: 600, to: 720 }] }
  await desk.store.transact({ who: 'test', at: desk.now() }, tx => tx.hoursException.create({ data: open }))
  await duePlan(desk, shop.vehicles[0]!, '2026-04-19')
  const first = async (weekBegins: number) => {
    const ways = { country: 'US', weekBegins }
    return (await speaking('en', () => upkeepYear(desk), ways)).weeks.slice(0, 2)
  }
  // ISO 8601: week 16 ends on Sunday 19 April 2026.
  expect(await first(1)).toMatchObject([
    { beginsOn: '2026-04-13', week: 16, asDue: 1 },
    { beginsOn: '2026-04-20', week: 17, asDue: 0 },
  ])
  // Counted on a calendar from the Sunday before 1 January 2026: 12 April begins week 16.
  expect(await first(7)).toMatchObject([
    { beginsOn: '2026-04-12', week: 16, asDue: 0 },
    { beginsOn: '2026-04-19', week: 17, asDue: 1 },
  ])
})

it('has the more room the larger the share the shop gives to it, and none in a week it is closed', async () => {
  await duePlan(desk, shop.vehicles[0]!)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.hoursException.createMany({
      data: ['04', '05', '06', '07', '08', '09', '10'].map(day => ({ date: `2026-05-${day}`, hours: [] })),
    }),
  )
  await change(desk, { roomShare: 0.1 })
  const small = (await upkeepYear(desk)).weeks
  await change(desk, { roomShare: 0.2 })
  const large = (await upkeepYear(desk)).weeks
  expect(small[3]).toMatchObject({ beginsOn: '2026-05-04', room: 0 })
  // Bay 1 alone can wash: 60 opening hours a week, an hour a wash, a tenth and a fifth of it.
  expect([small[4]!.room, large[4]!.room]).toEqual([6, 12])
})

it('spreads what is crowded within the windows, leaves what was agreed, and is taken back as a whole', async () => {
  await change(desk, { roomShare: 0.034 })
  const plans = []
  for (let i = 0; i < 4; i++) plans.push(await duePlan(desk, shop.vehicles[i]!, '2026-06-10'))
  await moveVisit(desk, { planId: plans[0]!, ruleOn: '2026-06-10', to: '2026-06-11' })
  const before = await upkeepYear(desk)
  expect(before.weeks.find(week => week.beginsOn === '2026-06-08')).toMatchObject({ asDue: 4, room: 2 })
  const preview = (await previewSpread(desk))!
  expect(preview.moves.map(move => move.planId)).not.toContain(plans[0])
  expect(preview.moves.length).toBeGreaterThan(0)
  for (const move of preview.moves) {
    expect(move.fromOn).toBe('2026-06-10')
    expect(move.toOn >= '2026-05-11' && move.toOn <= '2026-07-10').toBe(true)
  }
  expect(preview.weeks.every(week => week.planned <= week.room || week.beginsOn > '2027-01-01')).toBe(true)
  expect((await upkeepYear(desk)).weeks).toEqual(before.weeks)
  const { actId } = await applySpread(desk)
  expect((await upkeepYear(desk)).weeks.map(week => week.planned)).toEqual(
    preview.weeks.map(week => week.planned),
  )
  const { visits } = await dueVisits(desk, { fromDate: '2026-04-15', toDate: '2026-06-30' })
  for (const move of preview.moves)
    expect(visits.find(visit => visit.planId === move.planId)).toMatchObject({
      dueOn: '2026-06-10',
      targetOn: move.toOn,
    })
  await expect(applySpread(desk)).rejects.toMatchObject({ code: 'nothing-to-do' })
  await undoAct(desk, { actId })
  expect((await upkeepYear(desk)).weeks).toEqual(before.weeks)
})

it('counts no visit that is booked, as long as its place stands', async () => {
  const planId = await duePlan(desk, shop.vehicles[0]!, '2026-04-22')
  await duePlan(desk, shop.vehicles[1]!, '2026-04-22')
  const { id: jobId } = await bookJob(desk, shop, { treatments: ['wash'] })
  const write = (status: string, heldUntilAt: number | null = null) =>
    desk.store.transact({ who: 'test', at: desk.now() }, tx =>
      tx.job.update({ where: { id: jobId }, data: { status, heldUntilAt } }),
    )
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    writeEntries(tx, { actId: 'act', at: desk.now(), who: 'test' }, [
      { vehicleId: shop.vehicles[0]!, planId, what: 'booked', ruleOn: '2026-04-22', jobId },
    ]),
  )
  const due = async () => (await upkeepYear(desk)).weeks[1]
  expect(await due()).toMatchObject({ beginsOn: '2026-04-20', asDue: 1, planned: 1 })
  expect((await previewSpread(desk))!.left.map(each => each.planId)).not.toContain(planId)
  await write('held', desk.now() + 60)
  expect(await due()).toMatchObject({ asDue: 1 })
  await write('held', desk.now())
  expect(await due()).toMatchObject({ asDue: 2 })
  await write('cancelled')
  expect(await due()).toMatchObject({ asDue: 2, planned: 2 })
})
