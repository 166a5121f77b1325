import { beforeEach, expect, test } from 'vitest'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { bookPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { lend } from '../../../main/services/job/lending.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { saveLendable } from '../../../main/services/setUp/lendables.ts'
import { setWall, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York: one loan car, one key box.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await saveLendable(desk, { name: 'Blue loan car', kind: 'loan car' })
  await saveLendable(desk, { name: 'Key box 1', kind: 'key box' })
})

const wish = (what: 'wash' | 'topped' = 'wash') => ({
  treatmentIds: [shop.treatments[what]],
  condition: 'good' as const,
  sizeClass: 'medium' as const,
})
const asked = (lends: ('loan car' | 'key box' | 'covered place')[]) => offers(desk, { ...wish(), lends })

async function book(vehicle: number, lends: ('loan car' | 'key box')[], what: 'wash' | 'topped' = 'wash') {
  const { askedDay } = await offers(desk, { ...wish(what), lends })
  if (!askedDay.feasible) throw new Error(askedDay.reasons.join(' '))
  const { sizeClass: _, ...rest } = wish(what)
  const { jobId } = await bookPlace(desk, {
    ...rest,
    lends,
    vehicleId: shop.vehicles[vehicle]!,
    plan: askedDay.plan,
  })
  return getJob(desk, { id: jobId })
}

test('A loan car is lent once at a time: the next booking that asks for one is offered the first time it is free', async () => {
  const first = await book(0, ['loan car'])
  expect(first.lent).toEqual([{ name: 'Blue loan car', kind: 'loan car' }])
  expect([first.dropOffAt, first.handoverAt]).toEqual(['15T08:00', '15T09:00'].map(wall))
  // Three can wash, but the only wet bay is taken until nine, as is the loan car.
  const plain = await asked([])
  const lending = await asked(['loan car'])
  expect(plain.soonest.feasible && plain.soonest.dropOffAt).toBe(wall('15T09:00'))
  expect(lending.soonest.feasible && lending.soonest.dropOffAt).toBe(wall('15T09:00'))
  expect(lending.notes.join(' ')).toContain('only days on which one is free')
})

test('Lent for the whole day, it moves the next offer, and a place without it is refused by its field', async () => {
  const first = await book(0, ['loan car'], 'topped')
  const plain = await asked([])
  const lending = await asked(['loan car'])
  if (!plain.soonest.feasible || !lending.soonest.feasible) throw new Error('there is room for both')
  expect(plain.soonest.handoverAt).toBeLessThan(first.handoverAt)
  expect(lending.soonest.dropOffAt).toBeGreaterThanOrEqual(first.handoverAt)
  const { sizeClass: _, ...rest } = wish()
  const place = { ...rest, vehicleId: shop.vehicles[1]!, plan: plain.soonest.plan }
  await expect(bookPlace(desk, { ...place, lends: ['loan car'] })).rejects.toMatchObject({
    code: 'lent',
    field: 'lends',
  })
  // Cancelled, it is free again.
  await cancelJob(desk, { id: first.id, version: first.version, reason: 'Sold' })
  const free = await asked(['loan car'])
  expect(free.soonest.feasible && free.soonest.dropOffAt).toBe(wall('15T08:00'))
})

test('What the shop does not have is said, and offers nothing', async () => {
  const none = await asked(['covered place'])
  expect(none.soonest.feasible).toBe(false)
  expect(none.notes.join(' ')).toContain('no covered place in use')
})

test('A move that would lend it twice is refused in words, and another job has it once it is taken back', async () => {
  const first = await book(0, ['loan car', 'key box'])
  const second = await book(1, [])
  await expect(
    lend(desk, { id: second.id, version: second.version, kind: 'loan car', on: false }),
  ).rejects.toMatchObject({
    code: 'as-before',
  })
  await lend(desk, { id: second.id, version: second.version, kind: 'loan car', on: true })
  const { version } = await getJob(desk, { id: second.id })
  setWall(desk, '15T08:00')
  await cancelJob(desk, { id: first.id, version: first.version, reason: 'x' })
  await moveStay(desk, {
    jobId: second.id,
    version,
    position: 0,
    bayId: shop.bays['Bay 1']!,
    startAt: wall('15T08:00'),
  })
  const third = await book(2, ['loan car'])
  expect(third.dropOffAt).toBe(wall('15T09:00'))
  await expect(
    moveStay(desk, {
      jobId: second.id,
      version: version + 1,
      position: 0,
      bayId: shop.bays['Bay 1']!,
      startAt: wall('15T09:00'),
    }),
  ).rejects.toThrow()
  await lend(desk, { id: third.id, version: third.version, kind: 'loan car', on: false })
  expect((await getJob(desk, { id: third.id })).lent).toEqual([])
})

test('The morning sheet says who gets it and who brings it back, and a car that overruns is told of the next', async () => {
  const first = await book(0, ['loan car'])
  await book(1, ['loan car'])
  const sheet = await morningSheet(desk, { date: '2026-04-15' })
  expect(sheet.arrivals.map(car => car.lent)).toEqual([['Blue loan car'], ['Blue loan car']])
  expect(sheet.handovers.map(car => car.lent)).toEqual([['Blue loan car'], ['Blue loan car']])
  await arrive(desk, { id: first.id, version: first.version })
  setWall(desk, '15T09:30')
  expect((await getJob(desk, { id: first.id })).conflicts.join(' ')).toContain('needs Blue loan car too')
})

test('Lent later, a thing has to be free for the whole of the stay, not only at its beginning', async () => {
  const first = await book(0, ['loan car'], 'topped')
  const second = await book(1, [])
  expect(second.dropOffAt).toBeLessThan(first.handoverAt)
  await expect(
    lend(desk, { id: second.id, version: second.version, kind: 'loan car', on: true }),
  ).rejects.toMatchObject({ code: 'lent', field: 'lends' })
})

test('A car that runs late keeps what it borrowed until it really leaves: nobody is lent it for before that', async () => {
  const first = await book(0, ['loan car'])
  const second = await book(1, [])
  await moveStay(desk, {
    jobId: second.id,
    version: second.version,
    position: 0,
    bayId: shop.bays['Bay 1']!,
    startAt: wall('15T10:00'),
  })
  await arrive(desk, { id: first.id, version: first.version })
  // Its wash of an hour, planned for eight, has not begun at half past nine: it goes home at half past ten.
  setWall(desk, '15T09:30')
  const { version } = await getJob(desk, { id: second.id })
  await expect(lend(desk, { id: second.id, version, kind: 'loan car', on: true })).rejects.toMatchObject({
    code: 'lent',
  })
  const { soonest } = await asked(['loan car'])
  expect(soonest.feasible && soonest.dropOffAt).toBeGreaterThanOrEqual(wall('15T10:30'))
})
