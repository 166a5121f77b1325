import { beforeEach, expect, test } from 'vitest'
import { boardRange } from '../../../main/services/board/board.ts'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { setBayUsual } from '../../../main/services/cure/readings.ts'
import { jobCure } from '../../../main/services/job/jobCure.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { does, job, layeredCar, setWall, toppedCar, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

async function next() {
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 2 })
  return stays.flatMap(stay => stay.next ?? [])
}

test('A car is told its next thing one after the other: touch, layer, leave; nothing while hands are on it', async () => {
  const id = await layeredCar(desk, shop)
  expect(await next()).toEqual([])
  for (const position of [0, 1, 2]) await does(desk, id, position)
  const end = (await job(desk, id)).steps[2]!.actualEndAt!
  expect(await next()).toEqual([{ what: 'touch', fromAt: end + 60, untilAt: null, leaving: 'dry' }])
  setWall(desk, '15T12:00')
  expect(await next()).toEqual([{ what: 'layer', fromAt: end + 60, untilAt: end + 240, leaving: 'dry' }])
  const done = await does(desk, id, 4, { from: '15T12:00', to: '15T13:30' })
  setWall(desk, '15T15:00')
  expect(await next()).toEqual([{ what: 'leave', fromAt: done.safeAt, untilAt: null, leaving: 'dry' }])
})

test('A topper has a window of its own', async () => {
  const id = await toppedCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, id, position)
  const end = (await job(desk, id)).steps[2]!.actualEndAt!
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((end + 61) * 60_000).toString())
  // The sheet's 279 minutes, less the 39 to the last panel's turn; it names no latest time.
  expect(await next()).toEqual([{ what: 'topper', fromAt: end + 240, untilAt: null, leaving: 'dry' }])
})

test('The morning sheet lists the day’s milestones in the order they come, by the clock where one runs', async () => {
  const first = await layeredCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, first, position)
  const before = await morningSheet(desk, { date: '2026-04-15' })
  const times = before.moments.map(moment => moment.at)
  expect(times).toEqual([...times].sort((a, b) => a - b))
  const end = (await job(desk, first)).steps[2]!.actualEndAt!
  expect(before.moments.filter(moment => moment.measured).map(({ at, what }) => [at, what])).toEqual([
    [end + 60, '▲ safe to touch'],
    [end + 60, 'next layer may go on'],
    [end + 240, 'next layer at the latest'],
  ])
  const { bayId } = (await job(desk, first)).steps[2]!
  await setBayUsual(desk, { bayId, version: 0, celsius: 10 })
  const cold = await morningSheet(desk, { date: '2026-04-15' })
  // Ten degrees under the reference: twice as long, by the doubling rule of the profile.
  expect(cold.moments.find(moment => moment.measured)).toMatchObject({ at: end + 120 })
})

test('Where the rest of a late job fits elsewhere sooner, that place is offered, and taking it brings the car home then', async () => {
  const id = await layeredCar(desk, shop)
  const booked = await does(desk, id, 0)
  // Who was to wipe and coat it goes home ill until Friday; somebody else could do it.
  const crewId = booked.steps[1]!.crew[0]!.id
  const away = { fromAt: wall('15T09:00'), toAt: wall('17T08:00'), reason: 'ill' }
  await saveAbsence(desk, { crewId, ...away, accepted: true })
  const late = await job(desk, id)
  const { slip } = await jobCure(desk, { id })
  expect(slip).toMatchObject({ nextAt: late.handoverAt, lateMin: late.lateMin })
  expect(slip?.message?.text).toContain('taking longer than planned')
  const { position, bayId, startAt, handoverAt } = slip!.place!
  expect(handoverAt).toBeLessThan(slip!.nextAt)
  await moveStay(desk, { jobId: id, version: late.version, position, bayId, startAt })
  const moved = await job(desk, id)
  expect(moved.handoverAt).toBe(handoverAt)
  expect(moved.steps[1]!.crew[0]!.id).not.toBe(crewId)
})

test('Where nothing is sooner, only the next time is offered', async () => {
  const id = await layeredCar(desk, shop)
  await does(desk, id, 0)
  setWall(desk, '15T14:00')
  const { slip } = await jobCure(desk, { id })
  expect(slip).toMatchObject({ nextAt: (await job(desk, id)).handoverAt, place: null })
})
