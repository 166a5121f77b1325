import { beforeEach, expect, test } from 'vitest'
import { dateOf, zonedOf } from '../../../main/domain/calendar/index.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { recordOut } from '../../../main/services/mend/record.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let first: JobView

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  first = await bookJob(desk, shop, { treatments: ['topped'], kind: 'askedDay' })
})

const zone = 'America/New_York'
const clock = (at: number) => zonedOf(at, zone).toPlainDateTime().toString().slice(8, 16)

test('The sheet names who comes, who does what, what cures and who goes home', async () => {
  await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1, kind: 'askedDay' })
  const sheet = await morningSheet(desk, { date: '2026-04-15' })
  expect(sheet.shopName).toBe('Ashdown Paint Care')
  expect(sheet.arrivals.map(car => [car.plate, clock(car.dueAt), car.bayName, car.treatments])).toEqual([
    ['KFR 204', '15T08:00', 'Bay 1', ['One layer and topper']],
    ['LOW 771', '15T09:00', 'Bay 1', ['Single correction']],
  ])
  // A number of the shop's own country is read out as it is dialled there (ITU-T E.123: national notation).
  expect(sheet.arrivals[0]!.phone).toBe('(212) 555-0143')
  expect(sheet.moves.map(move => [move.plate, clock(move.at), move.fromBayName])).toEqual([
    ['KFR 204', '15T09:00', 'Bay 1'],
    ['LOW 771', '15T10:00', 'Bay 1'],
  ])
  // Every hands-on step of the day is somebody's, once.
  const steps = sheet.crew.flatMap(person => person.steps.map(step => `${step.plate} ${step.name}`))
  expect(steps.toSorted()).toEqual([
    'KFR 204 Layer',
    'KFR 204 Panel wipe',
    'KFR 204 Topper',
    'KFR 204 Wash',
    'LOW 771 One-step correction',
    'LOW 771 Wash',
  ])
  for (const person of sheet.crew) expect(person.present.map(span => clock(span.from))).toEqual(['15T08:00'])
  const bay = sheet.bays.find(each =>
    each.cars.some(car => car.plate === 'KFR 204' && car.blocks.length > 2),
  )!
  const cure = bay.cars[0]!.blocks[2]!
  expect([cure.name, clock(cure.fromAt), clock(cure.toAt), clock(cure.cure!.tackFreeAt)]).toEqual([
    'Cure before the topper',
    '15T11:00',
    '15T15:00',
    '15T12:00',
  ])
  expect(sheet.cautions.map(caution => caution.productName)).toEqual(['Ovrel Two', 'Ovrel Veil'])
  expect(sheet.cautions[0]!.words).toContain('Read its safety data sheet first')
})

test('A cure that ends on the day says from when the car may be touched, topped and driven', async () => {
  let version = first.version
  const now = (wall: string) =>
    desk.setNow(Temporal.PlainDateTime.from(`2026-04-${wall}`).toZonedDateTime(zone).toInstant().toString())
  const key = () => ({ id: first.id, version })
  ;({ version } = await arrive(desk, key()))
  for (const [position, wall] of [
    [0, '15T09:00'],
    [1, '15T09:30'],
    [2, '15T11:10'],
  ] as const) {
    ;({ version } = await startStep(desk, { ...key(), position }))
    now(wall)
    ;({ version } = await finishStep(desk, { ...key(), position }))
  }
  const sheet = await morningSheet(desk, { date: '2026-04-15' })
  const [coat, topper] = sheet.cures
  expect(coat).toMatchObject({ productName: 'Ovrel Two', plate: 'KFR 204' })
  expect(coat!.marks.actual).toBe(true)
  expect(coat!.words).toBe('"Topper" from 15:10; the data sheet decides.')
  expect([clock(coat!.touchAt), clock(coat!.topperAt!)]).toEqual(['15T12:10', '15T15:10'])
  // The car drives when both the coat and the topper over it let it: the topper ends 15:55, 4 h on it is 19:55.
  expect(clock(coat!.driveAt)).toBe('15T19:55')
  expect(topper).toMatchObject({ productName: 'Ovrel Veil', topperAt: null })
  const next = await morningSheet(desk, { date: '2026-04-16' })
  expect(next.cures.map(cure => cure.productName)).toEqual(['Ovrel Veil'])
  expect(next.handovers).toMatchObject([{ plate: 'KFR 204', standing: 'kept', leftAt: null }])
  expect(next.handovers[0]!.words).toBe('By its profile earliest pick-up Wednesday 19:55, recommended 03:55.')
  expect(next.bays.flatMap(bay => bay.cars.map(car => [car.leaves, car.toAt]))).toEqual([
    [true, first.promisedAt],
  ])
  expect(sheet.bays.flatMap(bay => bay.cars.map(car => car.leaves))).not.toContain(true)
})

test('Who should have come or gone before stays on today’s sheet, and on no other', async () => {
  desk.setNow('2026-04-17T12:30:00Z')
  const plates = (cars: { plate: string }[]) => cars.map(car => car.plate)
  const missed = await morningSheet(desk, { date: '2026-04-17' })
  expect(plates(missed.arrivals)).toEqual(['KFR 204'])
  expect(missed.arrivals[0]).toMatchObject({ dueAt: first.dropOffAt, arrivedAt: null })
  expect(plates((await morningSheet(desk, { date: '2026-04-18' })).arrivals)).toEqual([])
  // It comes after all and is worked on; a day later it should be gone and is not.
  let { version } = await arrive(desk, { id: first.id, version: first.version })
  for (const [position, iso] of [
    [0, '2026-04-17T13:30:00Z'],
    [1, '2026-04-17T14:00:00Z'],
    [2, '2026-04-17T15:30:00Z'],
    [4, '2026-04-17T20:30:00Z'],
  ] as const) {
    if (position === 4) desk.setNow('2026-04-17T19:45:00Z')
    ;({ version } = await startStep(desk, { id: first.id, version, position }))
    desk.setNow(iso)
    ;({ version } = await finishStep(desk, { id: first.id, version, position }))
  }
  desk.setNow('2026-04-20T12:30:00Z')
  const stays = await morningSheet(desk, { date: '2026-04-20' })
  expect(plates(stays.handovers)).toEqual(['KFR 204'])
  expect(stays.bays.flatMap(bay => plates(bay.cars))).toEqual(['KFR 204'])
})

test('A date that is none is refused by name, and a closed day is an empty sheet', async () => {
  await expect(morningSheet(desk, { date: '2026-02-30' })).rejects.toMatchObject({ field: 'date' })
  const sunday = await morningSheet(desk, { date: '2026-04-19' })
  expect(sunday).toMatchObject({ open: [], arrivals: [], moves: [], cures: [], handovers: [], cautions: [] })
})

test('Hands from outside stand on the sheet of the last day on which they can still be asked', async () => {
  const crewId = first.steps[0]!.crew[0]!.id
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.crewMember.update({ where: { id: crewId }, data: { noticeDays: 2 } }),
  )
  const later = await bookJob(desk, shop, {
    treatments: ['topped'],
    vehicle: 1,
    kind: 'askedDay',
    askedDate: '2026-04-20',
  })
  const theirs = later.steps.filter(step => step.crew.some(person => person.id === crewId))
  const toAsk = async (date: string) => (await morningSheet(desk, { date })).toAsk.map(ask => ask.step)
  expect(theirs.length).toBeGreaterThan(0)
  expect(await toAsk('2026-04-18')).toEqual(theirs.map(step => step.name))
  expect([await toAsk('2026-04-17'), await toAsk('2026-04-19')]).toEqual([[], []])
})

test('Somebody from outside is on the sheet of a day with work for them, and on no other', async () => {
  const { id: crewId, name } = first.steps[0]!.crew[0]!
  const names = async (date: string) => (await morningSheet(desk, { date })).crew.map(person => person.name)
  expect(await names('2026-05-04')).toContain(name)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.crewMember.update({ where: { id: crewId }, data: { noticeDays: 2 } }),
  )
  expect(await names('2026-04-15')).toContain(name)
  expect(await names('2026-05-04')).not.toContain(name)
})

test('A step of somebody who left in the morning is marked on their row, and its car’s promise is not kept', async () => {
  const topper = first.steps.findIndex(step => step.name === 'Topper')
  const { id: crewId } = first.steps[topper]!.crew[0]!
  // Gone from 10:30; the topper is theirs at 15:00.
  const leftAt = first.steps[topper]!.startAt - 270
  await recordOut(desk, { kind: 'person', crewId, fromAt: leftAt, toAt: leftAt + 1440, reason: 'ill' })
  const sheet = await morningSheet(desk, { date: '2026-04-15' })
  const theirs = sheet.crew.find(person => person.id === crewId)!.steps
  expect(theirs.filter(step => step.fromAt >= leftAt).map(step => [step.name, step.missing])).toContainEqual([
    'Topper',
    true,
  ])
  expect(theirs.filter(step => step.toAt <= leftAt).every(step => !step.missing)).toBe(true)
  const home = await morningSheet(desk, { date: dateOf(first.handoverAt, zone) })
  expect(home.handovers.find(car => car.jobId === first.id)).toMatchObject({
    standing: 'lacking',
    lack: 'somebody is missing',
  })
})
