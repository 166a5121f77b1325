import { expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { bayUse } from '../../../main/services/dayPlan/bayUse.ts'
import { act } from '../../../main/services/desk/desk.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { saveBill } from '../../../main/services/money/bill.ts'
import { saveClosure } from '../../../main/services/setUp/bayClosures.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

// Wednesday 15 April 2026, 08:00 in New York.
test('a booked week: each bay’s opening hours are all told, and what the car blocks', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const job = await bookJob(desk, shop, {
    treatments: ['correction', 'twoLayers'],
    kind: 'askedDay',
    askedDate: '2026-04-16',
  })
  const { weeks, treatments } = await bayUse(desk, { weeks: 2 })
  expect(weeks.map(week => week.beginsOn)).toEqual(['2026-04-06', '2026-04-13'])
  for (const week of weeks)
    for (const bay of week.bays) expect(bay.handsOnMin + bay.blockedMin + bay.idleMin).toBe(6 * 600)
  expect(weeks[0]!.all).toMatchObject({ handsOnMin: 0, blockedMin: 0, freeCureMin: 0 })
  const worked = job.steps.filter(step => step.kind === 'work').map(step => step.endAt - step.startAt)
  const hours = weeks[1]!.all
  // No step of these runs over closing.
  expect(hours.handsOnMin).toBe(worked.reduce((sum, min) => sum + min, 0))
  expect(hours.blockedMin).toBe(treatments.reduce((sum, each) => sum + each.blockedMin, 0))
  expect(treatments.map(each => each.name).sort()).toEqual(job.treatments.map(each => each.name).sort())
})

test('weeks begin on the day the shop begins them: a Sunday’s work is of the week after it', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  // Sunday 12 April 2026, 10:00 to 11:00 in New York, in a shop that opened that day.
  const fromAt = atWall('2026-04-12', 600, 'America/New_York')
  const span = { startAt: fromAt, endAt: fromAt + 60 }
  await act(desk, async tx => {
    await tx.hoursException.create({ data: { date: '2026-04-12', hours: [{ from: 600, to: 720 }] } })
    await tx.jobStep.updateMany({ where: { jobId: id, kind: 'work' }, data: span })
    const times = { dropOffAt: fromAt, handoverAt: fromAt + 60, leftAt: fromAt + 60, status: 'handedOver' }
    await tx.job.update({ where: { id }, data: times })
  })
  const used = async (weekBegins: number) => {
    const ways = { country: 'US', weekBegins }
    const { weeks } = await speaking('en', () => bayUse(desk, { weeks: 2 }), ways)
    return weeks.map(({ beginsOn, all }) => [beginsOn, all.handsOnMin])
  }
  expect(await used(7)).toEqual([
    ['2026-04-05', 0],
    ['2026-04-12', 60],
  ])
  expect(await used(1)).toEqual([
    ['2026-04-06', 60],
    ['2026-04-13', 0],
  ])
})

test('what a treatment earned is what is billed of it: a discount is off, an extra is not its', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const earned = async () => (await bayUse(desk, { weeks: 1 })).treatments[0]!
  const before = await earned()
  const { version, treatments } = await getJob(desk, { id })
  expect(before.revenueMinor).toBe(treatments[0]!.priceMinor)
  const charge = { treatmentId: null, quantity: '1', taxKey: '' }
  await saveBill(desk, {
    id,
    version,
    prices: [],
    charges: [
      { ...charge, kind: 'discount', words: 'A friend', amountMinor: 1_000 },
      { ...charge, kind: 'extra', words: 'A cloth', amountMinor: 2_500 },
    ],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  })
  const after = await earned()
  // Off the whole: the extra bears its part of it by its price.
  const share = Math.round((1_000 * before.revenueMinor) / (before.revenueMinor + 2_500))
  expect(before.revenueMinor - after.revenueMinor).toBe(share)
  expect(after.blockedMin).toBe(before.blockedMin)
})

test('a car that has left counts in the weeks it was here, in no later one; a closed bay has fewer hours', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const { id, handoverAt, stays } = await bookJob(desk, shop, { treatments: ['wash'] })
  const left = { status: 'handedOver', leftAt: handoverAt }
  await act(desk, tx => tx.job.update({ where: { id }, data: left }))
  const zone = 'America/New_York'
  const [fromAt, toAt] = [atWall('2026-04-24', 480, zone), atWall('2026-04-24', 1080, zone)]
  await saveClosure(desk, { bayId: stays[0]!.bayId, fromAt, toAt, reason: 'Lamps', accepted: false })
  desk.setNow('2026-04-22T12:00:00Z')
  const { weeks, treatments } = await bayUse(desk, { weeks: 2 })
  expect(weeks.map(week => week.all.handsOnMin > 0)).toEqual([true, false])
  expect(treatments).toMatchObject([{ visits: 1 }])
  const hours = weeks[1]!.bays.map(bay => [bay.bayId, bay.handsOnMin + bay.blockedMin + bay.idleMin])
  for (const [bayId, open] of hours) expect(open).toBe(bayId === stays[0]!.bayId ? 5 * 600 : 6 * 600)
  expect((await bayUse(desk, { weeks: 1 })).treatments).toEqual([])
})
