import { beforeEach, expect, test } from 'vitest'
import { getApplied, saveDraft } from '../../../main/services/applied/record.ts'
import { finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { settleMissed } from '../../../main/services/job/missedWork.ts'
import { does, job, layeredCar, setWall, toppedCar, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York. What is wiped is coated within 45 min (common practice, no source: 30
// to 60), or wiped again; a layer gone hard is abraded for an hour.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    await tx.treatmentStep.updateMany({
      where: { stage: 'wipe' },
      data: { nextWithinMin: 45, missed: 'again', draws: [] },
    })
    await tx.treatmentStep.updateMany({
      where: { name: 'First layer' },
      data: { missed: 'abrade', missedMin: 60 },
    })
  })
})

const names = (view: Awaited<ReturnType<typeof job>>) => view.steps.map(step => step.name)

/** Washed and wiped by 11:45 and then left standing. */
async function wipedAndLeft(until: string) {
  const id = await toppedCar(desk, shop)
  await does(desk, id, 0)
  await does(desk, id, 1)
  setWall(desk, until)
  return job(desk, id)
}

test('A car wiped and left past its 45 minutes says so, and is wiped again by one key', async () => {
  expect((await wipedAndLeft('15T12:30')).missed).toBeNull()
  setWall(desk, '15T12:31')
  const { id } = await job(desk, (await desk.store.read.job.findFirstOrThrow()).id)
  const late = await job(desk, id)
  expect(late.missed).toMatchObject({ position: 2, adds: 'Panel wipe again, 30 min' })
  expect(late.conflicts.join(' ')).toContain('"Layer"')
  await expect(startStep(desk, { id, version: late.version, position: 2 })).rejects.toMatchObject({
    code: 'missed',
  })
  // What was begun in time and is only written down now is no miss.
  await startStep(desk, { id, version: late.version, position: 2, at: wall('15T12:30') })
})

test('The added wipe takes its time, is done by the same people, and the promise is judged anew', async () => {
  const late = await wipedAndLeft('15T12:45')
  await settleMissed(desk, { id: late.id, version: late.version, position: 2 })
  const mended = await job(desk, late.id)
  expect(names(mended).slice(0, 5)).toEqual([
    'Wash',
    'Panel wipe',
    'Panel wipe again',
    'Layer',
    'Cure before the topper',
  ])
  const [, wipe, again, layer] = mended.steps
  expect([again?.startAt, again?.endAt, layer?.startAt]).toEqual(
    ['15T12:45', '15T13:15', '15T13:15'].map(wall),
  )
  expect(again?.crew).toEqual(wipe?.crew)
  expect([mended.missed, mended.promisedAt]).toEqual([null, late.promisedAt])
  // The layer is done at 14:45 and cures for 4 h, past closing: the topper has to wait for the morning, until 08:45, and
  // cures for another 4 h.
  expect(mended.handoverAt).toBe(wall('16T12:45'))
  expect(mended.lateMin).toBe(wall('16T12:45') - late.promisedAt)
  expect((await saidOf(desk, mended.id))[0]).toBe(
    'added before "Layer", which came too late: Panel wipe again, 30 min',
  )
  const done = await does(desk, late.id, 2)
  expect(done.steps[3]?.can.start).toBe(true)
})

test('Wiped again toward closing, it waits for the morning with its coat', async () => {
  const late = await wipedAndLeft('15T16:45')
  expect(late.missed).not.toBeNull()
  await settleMissed(desk, { id: late.id, version: late.version, position: 2 })
  const { steps, missed, conflicts } = await job(desk, late.id)
  // A layer of 90 minutes after 17:15 would end past 18:00.
  expect(steps.slice(2, 4).map(step => step.startAt)).toEqual(['16T08:00', '16T08:30'].map(wall))
  expect([missed, conflicts]).toEqual([null, []])
})

test('Refused, it needs a reason, which is kept, and the coat may begin', async () => {
  const late = await wipedAndLeft('15T12:45')
  const input = { id: late.id, version: late.version, position: 2 }
  await expect(settleMissed(desk, { ...input, reason: ' ' })).rejects.toMatchObject({ code: 'text-missing' })
  await settleMissed(desk, { ...input, reason: 'Wiped panel by panel ahead of the coat' })
  const after = await job(desk, late.id)
  expect(after.missed).toBeNull()
  expect((await saidOf(desk, after.id))[0]).toContain('because: Wiped panel by panel ahead of the coat')
  await startStep(desk, { ...input, version: after.version })
  await expect(settleMissed(desk, { ...input, version: after.version + 1 })).rejects.toMatchObject({
    code: 'not-missed',
  })
})

test('What a later step draws moves with it, and the added wipe draws what the wipe does', async () => {
  const id = await toppedCar(desk, shop)
  const product = await desk.store.read.product.findFirstOrThrow()
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.stepDraw.createMany({
      data: [1, 2].map(position => ({
        jobId: id,
        position,
        productId: product.id,
        expectedCenti: position * 100,
        sdCenti: 10,
      })),
    }),
  )
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.jobStep.updateMany({ where: { jobId: id, position: 1 }, data: { productId: product.id } }),
  )
  await does(desk, id, 0)
  await does(desk, id, 1)
  setWall(desk, '15T12:45')
  const { version } = await job(desk, id)
  await settleMissed(desk, { id, version, position: 2 })
  const draws = await desk.store.read.stepDraw.findMany({ orderBy: { position: 'asc' } })
  expect(draws.map(({ position, expectedCenti }) => [position, expectedCenti])).toEqual([
    [1, 100],
    [2, 100],
    [3, 200],
  ])
})

test('A layer gone past its window is abraded for its hour, and then takes the next at once', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, id, position)
  setWall(desk, '16T08:00')
  const late = await job(desk, id)
  expect(late.missed).toMatchObject({ position: 4, adds: 'Abrade First layer, 1 h' })
  await settleMissed(desk, { id, version: late.version, position: 4 })
  const mended = await job(desk, id)
  expect(names(mended).slice(2, 6)).toEqual([
    'First layer',
    'Cure before the next layer',
    'Abrade First layer',
    'Second layer',
  ])
  expect(mended.steps.slice(4, 6).map(step => step.startAt)).toEqual(['16T08:00', '16T09:00'].map(wall))
  expect([mended.missed, mended.conflicts]).toEqual([null, []])
  const abraded = await does(desk, id, 4)
  await startStep(desk, { id, version: abraded.version, position: 5 })
  await finishStep(desk, { id, version: abraded.version + 1, position: 5 })
})

test('Two windows settle one miss once', async () => {
  const { id, version } = await wipedAndLeft('15T12:45')
  await settleMissed(desk, { id, version, position: 2 })
  await expect(settleMissed(desk, { id, version, position: 2 })).rejects.toMatchObject({ code: 'stale' })
})

test('A coat that was planned too late is begun in time all the same', async () => {
  const { id } = await wipedAndLeft('15T12:20')
  // Closing at one, the shop has no time left for it today; whoever stays on begins it in time.
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.hoursException.create({ data: { date: '2026-04-15', hours: [{ from: 480, to: 780 }] } }),
  )
  const { version, missed } = await job(desk, id)
  // Only projected, it warns: nothing is to be added to a wipe that is still good.
  expect(missed).toMatchObject({
    position: 2,
    adds: null,
    words: expect.stringContaining('start it by 12:30'),
  })
  await expect(settleMissed(desk, { id, version, position: 2 })).rejects.toMatchObject({ code: 'not-missed' })
  await startStep(desk, { id, version, position: 2 })
  expect((await job(desk, id)).steps[2]).toMatchObject({ actualStartAt: wall('15T12:20') })
})

test('A layer taken off and laid again is one layer, and an open record follows its new place', async () => {
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.treatmentStep.updateMany({ where: { name: 'First layer' }, data: { missed: 'redo', missedMin: 60 } }),
  )
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, id, position)
  const entered = { lot: 'A1', who: 'Jo', zones: [] }
  const draft = { note: '', layers: [2, 4].map(position => ({ ...entered, position })) }
  await saveDraft(desk, { jobId: id, version: 0, draft })
  setWall(desk, '16T08:00')
  const late = await job(desk, id)
  await settleMissed(desk, { id, version: late.version, position: 4 })
  const laidAs = async () => (await getApplied(desk, { jobId: id })).facts.layers.map(each => each.name)
  expect(names(await job(desk, id)).slice(2)).toEqual([
    'First layer',
    'Cure before the next layer',
    'Take off First layer',
    'First layer again',
    'Cure before the next layer',
    'Second layer',
    'Cure before pick-up',
  ])
  const { draft: kept } = await desk.store.read.appliedRecord.findUniqueOrThrow({ where: { jobId: id } })
  expect(kept).toMatchObject({ layers: [{ position: 2 }, { position: 7 }] })
  // Until it is off it lies on the car.
  expect(await laidAs()).toEqual(['First layer'])
  for (const position of [4, 5, 7]) await does(desk, id, position)
  expect(await laidAs()).toEqual(['First layer again', 'Second layer'])
})
