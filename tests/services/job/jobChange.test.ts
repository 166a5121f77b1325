import { beforeEach, expect, test } from 'vitest'
import type { JobView } from '../../../main/api/views.ts'
import { zonedOf } from '../../../main/domain/calendar/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { cancelJob, handOver, promiseAgain } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, reopenStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let shop: TestShop
let job: JobView

// Wednesday 15 April 2026, 08:00 in New York; a car with two layers comes at once.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  job = await bookJob(desk, shop, { treatments: ['twoLayers'], kind: 'askedDay' })
})

const zone = 'America/New_York'
const clock = (at: number) => zonedOf(at, zone).toPlainDateTime().toString().slice(8, 16)

/** Sets the clock to a wall time of the shop. */
const at = (wall: string) =>
  desk.setNow(Temporal.PlainDateTime.from(`2026-04-${wall}`).toZonedDateTime(zone).toInstant().toString())

async function does(act: (desk: TestDesk, input: { id: string; version: number }) => Promise<unknown>) {
  await act(desk, { id: job.id, version: job.version })
  job = await getJob(desk, { id: job.id })
}
const start = (position: number) => does((desk, key) => startStep(desk, { ...key, position }))
const finish = (position: number) => does((desk, key) => finishStep(desk, { ...key, position }))

/** Wash 08:00, wipe 09:00, first layer 09:30 to 11:00, second 12:00 to 13:30, home from 17:30. */
async function firstLayerOn(wall = '15T11:00') {
  await does(arrive)
  await start(0)
  at('15T09:00')
  await finish(0)
  await start(1)
  at('15T09:30')
  await finish(1)
  await start(2)
  at(wall)
  await finish(2)
}

test('The day goes as planned: each step at its time, home as promised', async () => {
  expect(job.steps.map(step => clock(step.startAt))).toEqual([
    '15T08:00',
    '15T09:00',
    '15T09:30',
    '15T11:00',
    '15T12:00',
    '15T13:30',
  ])
  expect(clock(job.promisedAt)).toBe('15T17:30')
  await firstLayerOn()
  expect(job).toMatchObject({ status: 'inShop', lateMin: 0, lateWords: null, conflicts: [] })
  at('15T12:00')
  await start(4)
  at('15T13:30')
  await finish(4)
  expect(job.steps.map(step => step.state)).toEqual(['done', 'done', 'done', 'done', 'done', 'running'])
  at('15T17:30')
  job = await getJob(desk, { id: job.id })
  expect(job.steps.at(-1)!.state).toBe('done')
  await does(handOver)
  expect(job).toMatchObject({
    status: 'handedOver',
    leftAt: desk.now(),
    handoverAt: job.promisedAt,
    lateMin: 0,
  })
  expect((await saidOf(desk, job.id))[0]).toBe('handed over Wed 15 April 17:30')
})

test('The cure runs from the coat’s real end, and everything behind it follows', async () => {
  await firstLayerOn('15T11:20')
  // The second layer 60 min later at the earliest, then 90 min, then 4 h: 17:50, and 18:00 on the grid.
  expect(job.steps.slice(3).map(step => [clock(step.startAt), clock(step.endAt)])).toEqual([
    ['15T11:20', '15T12:20'],
    ['15T12:20', '15T13:50'],
    ['15T13:50', '15T17:50'],
  ])
  expect([clock(job.safeAt), clock(job.handoverAt)]).toEqual(['15T17:50', '15T18:00'])
  expect(job.lateMin).toBe(30)
  expect(job.lateWords).toContain('Promised 17:30, now expected 18:00: running late, 30 min.')
  const hold = job.steps[3]!
  expect(hold.cure).toMatchObject({ actual: true, coatEndAt: hold.startAt, tackFreeAt: hold.startAt + 60 })
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 1 })
  expect(stays.map(stay => stay.standing)).toEqual(['late', 'late'])
})

test('An hour too many sends the car home the next morning, at the first open minute after its cure', async () => {
  await firstLayerOn('15T12:00')
  expect([clock(job.safeAt), clock(job.handoverAt)]).toEqual(['15T18:30', '16T08:00'])
})

test('A step that runs on is projected on while it runs', async () => {
  await does(arrive)
  await start(0)
  at('15T09:40')
  job = await getJob(desk, { id: job.id })
  expect(job.steps[0]).toMatchObject({ state: 'running', endAt: desk.now() })
  expect(clock(job.steps[1]!.startAt)).toBe('15T09:40')
  expect(job.lateMin).toBeGreaterThan(0)
})

test('A layer is not begun inside its recoat minimum, and a missed window is shown, not hidden', async () => {
  await firstLayerOn()
  at('15T11:30')
  await expect(start(4)).rejects.toThrow('"Cure before the next layer" runs until 12:00, by the cure profile')
  expect(job.steps[4]!.can).toEqual({ start: false, finish: false, reopen: false, give: true })
  at('15T16:00')
  await start(4)
  expect(job.conflicts.join(' ')).toContain('must start within')
  expect(job.conflicts.join(' ')).toContain(
    'The profile of Ovrel Two asks: Abrade lightly and wipe before the next layer.',
  )
})

test('The car leaves before its profile’s figure only with a reason, which is kept', async () => {
  await firstLayerOn()
  at('15T12:00')
  await start(4)
  at('15T13:30')
  await finish(4)
  at('15T16:00')
  const refused = does(handOver)
  await expect(refused).rejects.toMatchObject({ code: 'reason-needed', field: 'reason' })
  await expect(refused).rejects.toThrow(
    'by the cure profile the earliest pick-up is 17:30. The data sheet decides',
  )
  await expect(does((desk, key) => handOver(desk, { ...key, reason: '  ' }))).rejects.toMatchObject({
    field: 'reason',
  })
  await does((desk, key) => handOver(desk, { ...key, reason: 'owner insists, told to keep it dry' }))
  expect(job.status).toBe('handedOver')
  expect((await saidOf(desk, job.id))[0]).toBe(
    "handed over Wed 15 April 16:00, 1 h 30 min before the profile's earliest, because: owner insists, told to keep it dry",
  )
  // Its bay is free from that minute on.
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 1 })
  expect(stays.at(-1)!.toAt).toBe(desk.now())
})

test('Words about a cure name the rule and who decides, and never call a coating safe', async () => {
  await firstLayerOn()
  at('15T17:00')
  job = await getJob(desk, { id: job.id })
  const words = [...job.cureWords, ...job.cautions, ...job.steps.map(step => step.name)].join(' ')
  expect(words).toContain('common practice. The data sheet decides.')
  expect(words).toContain('safety data sheet')
  expect(words.replaceAll('safety', '')).not.toMatch(/\bsafe\b/i)
})

test('The last time recorded can be taken back, step by step, and the plan is there again', async () => {
  const planned = job.steps.map(step => step.startAt)
  await does(arrive)
  at('15T08:20')
  await start(0)
  at('15T09:50')
  await finish(0)
  expect(job.lateMin).toBeGreaterThan(0)
  expect(job.steps.map(step => step.can.reopen)).toEqual([true, false, false, false, false, false])
  await expect(does((desk, key) => reopenStep(desk, { ...key, position: 2 }))).rejects.toMatchObject({
    code: 'not-last',
  })
  await does(reopenStep)
  expect(job.steps[0]).toMatchObject({ state: 'running', actualEndAt: null })
  await does(reopenStep)
  expect(job.steps[0]).toMatchObject({ state: 'planned', actualStartAt: null })
  await does(reopenStep)
  expect(job).toMatchObject({ status: 'booked', arrivedAt: null })
  expect(job.steps.map(step => step.startAt)).toEqual(planned)
})

test('Steps are done in order, once, and only what has happened is recorded', async () => {
  await expect(start(0)).rejects.toThrow('is not here yet')
  await does(arrive)
  await expect(does(arrive)).rejects.toMatchObject({ code: 'not-booked' })
  await expect(start(1)).rejects.toThrow('"Wash" comes before and is not finished')
  await expect(finish(0)).rejects.toMatchObject({ code: 'not-begun', field: 'position' })
  await expect(start(3)).rejects.toThrow('begins and ends by itself')
  await expect(start(9)).rejects.toMatchObject({ code: 'missing' })
  const stated = (at: number) => does((desk, key) => startStep(desk, { ...key, position: 0, at }))
  await expect(stated(desk.now() + 1)).rejects.toMatchObject({ code: 'to-come', field: 'at' })
  await expect(stated(desk.now() - 60)).rejects.toMatchObject({ code: 'too-old', field: 'at' })
  await start(0)
  await expect(start(0)).rejects.toMatchObject({ code: 'begun' })
})

test('Two people at once: the second is told to look again', async () => {
  const key = { id: job.id, version: job.version }
  const results = await Promise.allSettled([arrive(desk, key), arrive(desk, key)])
  expect(results.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
  expect((results.find(each => each.status === 'rejected') as PromiseRejectedResult).reason).toMatchObject({
    code: 'stale',
  })
})

test('A new promise is never before the car is ready, nor behind closed doors', async () => {
  await firstLayerOn('15T12:00')
  const promise = (wall: string) => {
    const promisedAt =
      Temporal.PlainDateTime.from(`2026-04-${wall}`).toZonedDateTime(zone).epochMilliseconds / 60_000
    return does((desk, key) => promiseAgain(desk, { ...key, promisedAt }))
  }
  await expect(promise('15T18:00')).rejects.toThrow(
    'The car is now expected home Thursday 08:00: promise that or later',
  )
  await expect(promise('16T20:00')).rejects.toMatchObject({ code: 'promise-closed', field: 'promisedAt' })
  await promise('16T10:00')
  expect(job).toMatchObject({ lateMin: 0, lateWords: null })
  expect((await saidOf(desk, job.id))[0]).toBe(
    'promised for Thu 16 April 10:00 instead of Wed 15 April 17:30',
  )
})

test('A booking is cancelled with a reason; a car that is here is not', async () => {
  const cancel = (reason: string) => does((desk, key) => cancelJob(desk, { ...key, reason }))
  await expect(cancel(' ')).rejects.toMatchObject({ field: 'reason' })
  await does(arrive)
  await expect(cancel('ill')).rejects.toThrow('hand it over')
  await does(reopenStep)
  await cancel('the owner is ill')
  expect(job).toMatchObject({ status: 'cancelled', stays: [] })
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 3 })
  expect(stays).toEqual([])
})

test('A car nobody has fetched keeps its bay and is not called late', async () => {
  await firstLayerOn()
  at('15T12:00')
  await start(4)
  at('15T13:30')
  await finish(4)
  at('16T09:10')
  job = await getJob(desk, { id: job.id })
  expect(job.lateMin).toBe(0)
  const last = job.stays.at(-1)!
  expect(clock(last.toAt)).toBe('16T09:15')
})

test('A car that overstays runs into the next one, and both say so', async () => {
  // Both clean bays are wanted: this car's from 17:30, and the other's by somebody else.
  const next = await bookJob(desk, shop, { treatments: ['topped'], vehicle: 1, kind: 'askedDay' })
  const third = await bookJob(desk, shop, {
    treatments: ['topped'],
    vehicle: 2,
    askedDate: '2026-04-15',
    kind: 'askedDay',
  })
  const follower = [next, third].find(other =>
    other.stays.some(stay =>
      job.stays.some(own => own.bayId === stay.bayId && own.toAt <= stay.fromAt && own.blocks.length > 1),
    ),
  )!
  await firstLayerOn('15T15:00')
  at('15T16:00')
  await start(4)
  at('15T17:30')
  await finish(4)
  expect(clock(job.handoverAt)).toBe('16T08:00')
  const other = await getJob(desk, { id: follower.id })
  expect(job.conflicts.join(' ')).toMatch(
    new RegExp(`${other.vehicle.plate} \\(job ${other.number}\\) needs Bay \\d too`),
  )
  expect(other.conflicts.join(' ')).toMatch(/KFR 204 \(job 1\) needs Bay \d too/)
})
