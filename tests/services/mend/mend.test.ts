import { beforeEach, expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { moveCrew } from '../../../main/services/job/people.ts'
import { amiss, mendCars } from '../../../main/services/mend/mend.ts'
import { recordOut } from '../../../main/services/mend/record.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York. Mika and Sal wash, Mika and Jo polish; bays 2 and 3 are for polishing.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const wall = (hour: number) => atWall('2026-04-15', hour * 60, 'America/New_York')
const today = (reason: string) => ({ fromAt: wall(8), toAt: wall(18), reason })
const job = (id: string) => getJob(desk, { id })

test('Whoever is sick is replaced at each car, one by one or all in one act, and nobody is asked twice', async () => {
  const first = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  const next = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1, kind: 'askedDay' })
  const crewId = first.steps[0]!.crew[0]!.id
  expect(next.steps[0]!.crew[0]!.id).toBe(crewId)
  await recordOut(desk, { kind: 'person', crewId, ...today('ill') })
  const { cars } = await amiss(desk)
  expect(cars.map(car => [car.jobId, car.ways[0]?.way, car.ways[0]?.kept])).toEqual([
    [first.id, 'person', true],
    [next.id, 'person', true],
  ])
  expect(cars[0]!.ways[0]!.words).toMatch(/^\w+ for \w+: "Wash"$/)
  const all = cars.map(({ jobId, version }) => ({ jobId, version, way: 'person' as const }))
  expect(await mendCars(desk, { cars: all })).toEqual({ mended: 2, left: [] })
  expect((await amiss(desk)).cars).toEqual([])
  for (const { id, steps } of [first, next]) {
    const now = await job(id)
    expect(now).toMatchObject({ standing: 'kept', conflicts: [] })
    expect([now.steps[0]!.startAt, now.steps[0]!.crew[0]!.id === crewId]).toEqual([steps[0]!.startAt, false])
  }
  await expect(mendCars(desk, { cars: all })).rejects.toMatchObject({ code: 'stale' })
})

test('A bay that is down has its booked car stand in another at the same time', async () => {
  const { id, steps } = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay' })
  const { bayId, startAt } = steps[1]!
  await recordOut(desk, { kind: 'bay', bayId, ...today('Lamp failed') })
  const [car] = (await amiss(desk)).cars
  expect(car!.ways.map(({ way, kept }) => [way, kept])).toContainEqual(['bay', true])
  await mendCars(desk, { cars: [{ jobId: id, version: car!.version, way: 'bay' }] })
  const now = await job(id)
  expect(now).toMatchObject({ standing: 'kept', conflicts: [] })
  expect([now.steps[1]!.startAt, now.steps[1]!.bayId === bayId]).toEqual([startAt, false])
})

test('In the middle of its work a car is rolled out of the bay that failed, and the sick person’s step passed on', async () => {
  const booked = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay' })
  const { id } = booked
  let { version } = await arrive(desk, { id, version: booked.version })
  ;({ version } = await startStep(desk, { id, version, position: 0 }))
  desk.setNow('2026-04-15T13:00:00Z')
  ;({ version } = await finishStep(desk, { id, version, position: 0 }))
  await startStep(desk, { id, version, position: 1 })
  desk.setNow('2026-04-15T14:00:00Z')
  const polishing = (await job(id)).steps[1]!
  await recordOut(desk, { kind: 'bay', bayId: polishing.bayId, ...today('Lamp failed'), fromAt: wall(10) })
  let [car] = (await amiss(desk)).cars
  expect(car!.ways[0]).toMatchObject({ way: 'push', kept: true })
  await mendCars(desk, { cars: [{ jobId: id, version: car!.version, way: 'push' }] })
  desk.setNow('2026-04-15T14:05:00Z')
  const rolled = await job(id)
  expect(rolled).toMatchObject({ standing: 'kept', conflicts: [] })
  expect(rolled.steps[1]!.moved).toMatchObject({ at: wall(10) })
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 1 })
  expect(new Set(stays.map(stay => stay.bayId)).size).toBe(3)

  const crewId = polishing.crew[0]!.id
  await recordOut(desk, { kind: 'person', crewId, ...today('ill'), fromAt: wall(10) + 5 })
  ;[car] = (await amiss(desk)).cars
  expect(car!.ways[0]).toMatchObject({ way: 'person', kept: true })
  await mendCars(desk, { cars: [{ jobId: id, version: car!.version, way: 'person' }] })
  expect(await job(id)).toMatchObject({ standing: 'kept', conflicts: [] })
  expect((await job(id)).steps[1]!.passes).toEqual([{ name: polishing.crew[0]!.name, untilAt: wall(10) + 5 }])
})

test('Where nobody else can do it, another time is the way out, told with when the car then goes home', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  for (const { id: crewId } of await desk.store.read.crewMember.findMany())
    await recordOut(desk, { kind: 'person', crewId, ...today('flu') })
  const [car] = (await amiss(desk)).cars
  expect(car!.ways).toMatchObject([{ way: 'time', kept: false }])
  await mendCars(desk, { cars: [{ jobId: id, version: car!.version, way: 'time' }] })
  expect(await job(id)).toMatchObject({ standing: 'late', lack: null, handoverAt: car!.ways[0]!.handoverAt })
})

test('A car that the mending of another has helped already is left as it is, and counts as mended', async () => {
  const sick = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  const beside = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1, kind: 'askedDay' })
  const [step, other] = [sick.steps[0]!, beside.steps[0]!]
  const crewId = step.crew[0]!.id
  const { id: toId } = await desk.store.read.crewMember.findFirstOrThrow({
    where: { name: { in: ['Mika', 'Sal'] }, id: { not: crewId } },
  })
  // Two in one bay at one time: only the later one lacks it.
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    const { id: stepId } = await tx.jobStep.findFirstOrThrow({ where: { jobId: beside.id } })
    await moveCrew(tx, stepId, { fromId: other.crew[0]!.id, toId })
    const { startAt, endAt, bayId } = step
    await tx.jobStep.update({ where: { id: stepId }, data: { startAt, endAt, bayId } })
  })
  await recordOut(desk, { kind: 'person', crewId, ...today('ill') })
  const { cars } = await amiss(desk)
  expect(cars.map(car => [car.jobId, car.lack])).toEqual([
    [sick.id, expect.anything()],
    [beside.id, expect.anything()],
  ])
  const all = cars.map(({ jobId, version }) => ({ jobId, version, way: 'time' as const }))
  expect(await mendCars(desk, { cars: all })).toEqual({ mended: 2, left: [] })
  // The first goes home later than promised, at the time it was given; nothing was done to the other.
  expect((await amiss(desk)).cars.map(car => car.jobId)).toEqual([sick.id])
  expect((await job(beside.id)).version).toBe(cars[1]!.version)
})
