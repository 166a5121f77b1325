import { beforeEach, expect, test } from 'vitest'
import { offers } from '../../../main/services/booking/offers.ts'
import { confirmCover } from '../../../main/services/job/cover.ts'
import { cancelJob, handOver } from '../../../main/services/job/jobActs.ts'
import { bookJob } from '../bookJob.ts'
import { does, job, keepsDryADay, layeredCar, setWall, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York. The coating lets the car go after 4 h and keeps it dry for a day.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await keepsDryADay(desk)
})

test('A car is promised for when it may get wet, and sooner only where somebody answers for its cover', async () => {
  const treatmentIds = [shop.treatments.twoLayers]
  const wish = { treatmentIds, sizeClass: 'medium' as const, condition: 'good' as const }
  const dry = await offers(desk, wish)
  const covered = await offers(desk, { ...wish, coveredBy: ' Ines Vale ' })
  expect([dry.coveredBy, covered.coveredBy]).toEqual([null, 'Ines Vale'])
  if (!dry.soonest.feasible || !covered.soonest.feasible) throw new Error('both are possible')
  // The second layer is done at 13:30: home at 17:30 under cover, and the next day at 13:30 without.
  expect(covered.soonest.handoverAt).toBe(wall('15T17:30'))
  expect(dry.soonest.handoverAt).toBe(wall('16T13:30'))
  expect(dry.soonest.safeAt).toBe(wall('16T13:30'))
})

test('A cover confirmed by name lets the car go sooner, taken back it keeps it, and the promise stays', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  const before = await job(desk, id)
  expect([before.coveredBy, before.handoverAt]).toEqual([null, wall('16T13:30')])
  setWall(desk, '15T18:00')
  await expect(handOver(desk, { id, version: before.version })).rejects.toThrow(
    'the earliest pick-up of the car, which has to stay dry, is',
  )
  await confirmCover(desk, { id, version: before.version, by: 'Ines Vale' })
  const covered = await job(desk, id)
  expect([covered.coveredBy, covered.safeAt]).toEqual(['Ines Vale', wall('15T17:30')])
  expect(covered.handoverAt).toBe(wall('15T17:30'))
  expect(covered.promisedAt).toBe(before.promisedAt)
  await expect(confirmCover(desk, { id, version: covered.version, by: 'Ines Vale' })).rejects.toMatchObject({
    code: 'as-before',
  })
  await confirmCover(desk, { id, version: covered.version, by: null })
  const again = await job(desk, id)
  expect([again.coveredBy, again.safeAt, again.handoverAt]).toEqual([
    null,
    wall('16T13:30'),
    wall('16T13:30'),
  ])
})

test('A booked car whose cover is confirmed is planned to leave at its handover figure', async () => {
  const { id, version } = await bookJob(desk, shop, {
    treatments: ['twoLayers'],
    vehicle: 1,
    kind: 'soonest',
  })
  const before = await job(desk, id)
  await confirmCover(desk, { id, version, by: 'Toma Birk' })
  const after = await job(desk, id)
  expect(before.handoverAt - after.handoverAt).toBe(20 * 60)
  expect(after.steps.at(-1)?.minutes).toBe(240)
})

test('A cover changes nothing of when a car leaves that nothing is laid on', async () => {
  const { id, version } = await bookJob(desk, shop, { treatments: ['wash'] })
  const planned = async () =>
    (await desk.store.read.job.findUniqueOrThrow({ where: { id } })).plannedHandoverAt
  const before = await planned()
  await confirmCover(desk, { id, version, by: 'Toma Birk' })
  expect(await planned()).toBe(before)
})

test('A cover is not confirmed for a job that is cancelled', async () => {
  const { id, version } = await bookJob(desk, shop, { treatments: ['twoLayers'] })
  const cancelled = await cancelJob(desk, { id, version, reason: 'moved away' })
  await expect(confirmCover(desk, { id, version: cancelled.version, by: 'Toma Birk' })).rejects.toThrow(
    'has no promise to change',
  )
})
