import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { writeEntries } from '../../../main/services/upkeep/acts.ts'
import { dueVisits } from '../../../main/services/upkeep/dueVisits.ts'
import type { DueFilter } from '../../../main/services/upkeep/inputs.ts'
import type { Tx } from '../../../main/store/store.ts'
import { bookJob } from '../bookJob.ts'
import { duePlan, type ReminderDesk, reminderDesk } from '../reminders/reminderDesk.ts'
import { agree } from './coatedCar.ts'

let desk: ReminderDesk['desk']
let shop: ReminderDesk['shop']
let plans: Record<'late' | 'near' | 'far', string>
let jobId: string
const write = (work: (tx: Tx) => Promise<unknown>) =>
  desk.store.transact({ who: 'test', at: desk.now() }, work)
const car = (i: number) => shop.vehicles[i] ?? ''
/** Wednesday 15 April 2026: one visit long overdue, one due within its window, one next year. */
beforeAll(async () => {
  ;({ desk, shop } = await reminderDesk(1))
  plans = {
    late: await duePlan(desk, car(0), '2026-01-10'),
    near: await duePlan(desk, car(1), '2026-04-28'),
    far: await duePlan(desk, car(2), '2027-02-01'),
  }
  await agree(desk, car(1), ['email'])
  jobId = (await bookJob(desk, shop, { treatments: ['wash'] })).id
})
beforeEach(() => write(tx => tx.upkeepEntry.deleteMany()))
afterAll(() => desk.close())

const seen = async (filter: DueFilter = {}, fromDate = '2026-04-15', toDate = '2027-03-01') => {
  const { visits, counts } = await dueVisits(desk, { fromDate, toDate, filter })
  return { visits, counts, ids: visits.map(visit => [visit.planId, visit.dueOn]) }
}

it('lists what is due between two days and all that is overdue, and counts each plan’s open visit', async () => {
  const { ids, counts } = await seen()
  expect(ids).toEqual([
    [plans.late, '2026-01-10'],
    [plans.near, '2026-04-28'],
    // 10 January 2027 is a Sunday, on which the shop is closed.
    [plans.late, '2027-01-09'],
    [plans.far, '2027-02-01'],
  ])
  expect(counts).toEqual({ overdue: 1, due: 1, soon: 0, later: 1 })
  expect((await seen({}, '2026-04-29')).ids[1]).toEqual([plans.late, '2027-01-09'])
  expect((await seen({}, '2026-04-28', '2026-04-28')).ids).toEqual([
    [plans.late, '2026-01-10'],
    [plans.near, '2026-04-28'],
  ])
})

it.each<[string, DueFilter, ('late' | 'near' | 'far')[]]>([
  ['an owner’s name, however written', { text: ' VALE ' }, ['late', 'late']],
  ['a plate', { text: 'low 771' }, ['near']],
  ['what is due', { text: 'yearly insp' }, ['late', 'near', 'late', 'far']],
  ['nothing that fits', { text: 'zzz' }, []],
  ['kinds', { kinds: ['inspection'] }, ['late', 'near', 'late', 'far']],
  ['another kind', { kinds: ['topper'] }, []],
  ['no kinds', { kinds: [] }, ['late', 'near', 'late', 'far']],
  ['states', { states: ['due'] }, ['near']],
  ['no states', { states: [] }, ['late', 'near', 'late', 'far']],
  ['who can be reached', { reachable: true }, ['near']],
  ['what is not booked', { unbooked: true }, ['late', 'near', 'late', 'far']],
])('filters by %s', async (_, filter, found) => {
  expect((await seen(filter)).ids.map(([planId]) => planId)).toEqual(found.map(name => plans[name]))
})

it('filters by car', async () => {
  expect((await seen({ vehicleId: car(1) })).ids).toEqual([[plans.near, '2026-04-28']])
})

it('shows the job a visit is booked as while it stands, and the day it is aimed at', async () => {
  const line = { vehicleId: car(1), planId: plans.near, ruleOn: '2026-04-28' }
  await write(tx =>
    writeEntries(tx, { actId: 'act', at: desk.now(), who: 'test' }, [
      { ...line, what: 'booked', jobId },
      { ...line, what: 'aimed', toDay: '2026-04-24' },
    ]),
  )
  const near = async (filter: DueFilter = {}) =>
    (await seen(filter)).visits.find(visit => visit.planId === plans.near)
  expect(await near()).toMatchObject({
    booking: { jobId, jobNumber: 1, status: 'booked' },
    targetOn: '2026-04-24',
    projected: false,
    daysLate: 0,
    channels: ['email'],
  })
  expect(await near({ unbooked: true })).toBeUndefined()
  await write(tx => tx.job.update({ where: { id: jobId }, data: { status: 'cancelled' } }))
  expect(await near({ unbooked: true })).toMatchObject({ booking: null })
})

it('says of each owner whether calling is allowed, and why not', async () => {
  const whyNot = async () => {
    const { visits } = await seen({ vehicleId: car(1) })
    return visits[0]?.noCall
  }
  expect(await whyNot()).toBe('never')
  await agree(desk, car(1), ['call'])
  expect(await whyNot()).toBeNull()
})

it('says how late the open visit is, and nothing of one to follow', async () => {
  const { visits } = await seen({ vehicleId: car(0) })
  // 10 January to 15 April 2026: 95 days, 65 of them beyond the 30 of its window.
  expect(visits.map(visit => [visit.projected, visit.daysLate > 0, visit.sentence === null])).toEqual([
    [false, true, false],
    [true, false, true],
  ])
})
