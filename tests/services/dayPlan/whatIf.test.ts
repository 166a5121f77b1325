import { beforeEach, expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import type { WhatIfInput } from '../../../main/services/dayPlan/inputs.ts'
import { pinJob } from '../../../main/services/dayPlan/pin.ts'
import {
  beginWhatIf,
  curingCars,
  discardWhatIf,
  keepWhatIf,
  stopWhatIf,
  whatIfRuns,
  whatIfStands,
} from '../../../main/services/dayPlan/whatIf.ts'
import { history } from '../../../main/services/history/history.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { getJob, type JobView } from '../../../main/services/job/jobView.ts'
import { listBays } from '../../../main/services/setUp/bays.ts'
import { listCrew } from '../../../main/services/setUp/crew.ts'
import { bookJob } from '../bookJob.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let job: JobView

const zone = 'America/New_York'
const wall = (date: string, hour: number) => atWall(`2026-04-${date}`, hour * 60, zone)

// Wednesday 15 April 2026, 08:00 in New York; a correction with two layers comes on Thursday.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  job = await bookJob(desk, shop, {
    treatments: ['correction', 'twoLayers'],
    kind: 'askedDay',
    askedDate: '2026-04-16',
  })
})

async function asked(what: WhatIfInput['what']) {
  const { runId } = await beginWhatIf(desk, { days: 14, what })
  await whatIfRuns.ends(desk.store)
  return { runId, view: await whatIfStands(desk) }
}

const layBay = () => job.stays.at(-1)!.bayId

test('a closed bay: what it does to the promise is shown, nothing is written, and discarding forgets it', async () => {
  const { view } = await asked({
    kind: 'bayClosed',
    bayId: layBay(),
    fromAt: wall('16', 0),
    toAt: wall('20', 0),
  })
  expect(view.promises).toMatchObject([{ jobId: job.id, hit: true, promisedAt: job.promisedAt }])
  expect(view.promises[0]!.broken).not.toBe('')
  expect(view.run).toMatchObject({ proven: true, working: false })
  expect((await listBays(desk)).flatMap(bay => bay.closures)).toEqual([])
  await discardWhatIf(desk)
  expect((await whatIfStands(desk)).run).toBeNull()
  expect(await getJob(desk, { id: job.id })).toEqual(job)
})

test('a car that is late anyway is not hit by what does not touch it', async () => {
  const second = job.stays[1]!
  const to = { position: second.position!, bayId: second.bayId, startAt: second.fromAt + 120 }
  await moveStay(desk, { jobId: job.id, version: job.version, ...to })
  const used = new Set(job.stays.map(stay => stay.bayId))
  const bayId = (await listBays(desk)).find(bay => !used.has(bay.id))!.id
  const { view } = await asked({ kind: 'bayClosed', bayId, fromAt: wall('16', 0), toAt: wall('20', 0) })
  const [promise] = view.promises
  expect(promise!.supposedAt).toBeGreaterThan(promise!.promisedAt)
  expect(promise).toMatchObject({ hit: false, broken: '' })
})

test('kept, the cars move and the bay is closed, in one act', async () => {
  const { runId, view } = await asked({
    kind: 'bayClosed',
    bayId: layBay(),
    fromAt: wall('16', 0),
    toAt: wall('20', 0),
  })
  expect(view.run!.changes).toHaveLength(1)
  expect(await keepWhatIf(desk, { runId })).toEqual({ cars: 1 })
  const after = await getJob(desk, { id: job.id })
  expect(after.stays.map(stay => stay.bayId)).not.toContain(layBay())
  expect((await listBays(desk)).flatMap(bay => bay.closures)).toMatchObject([
    { fromAt: wall('16', 0), toAt: wall('20', 0) },
  ])
  expect(await brokenLaws(desk)).toEqual([])
  await expect(keepWhatIf(desk, { runId })).rejects.toMatchObject({ code: 'stale' })
})

test('somebody away: another takes the work where there is one, and keeping it notes the absence', async () => {
  const { runId, view } = await asked({
    kind: 'away',
    crewId: shop.crew.Mika!,
    fromAt: wall('16', 0),
    toAt: wall('17', 0),
  })
  expect(view.promises[0]!.hit).toBe(true)
  await keepWhatIf(desk, { runId })
  const mika = (await listCrew(desk)).find(person => person.name === 'Mika')!
  expect(mika.absences).toMatchObject([{ fromAt: wall('16', 0), toAt: wall('17', 0) }])
  expect(await brokenLaws(desk)).toEqual([])
})

test('a rush car gets a place among the others, and keeping it books nothing', async () => {
  const { runId, view } = await asked({
    kind: 'rush',
    treatmentIds: [shop.treatments.wash],
    sizeClass: 'medium',
    fromAt: wall('16', 8),
    toAt: wall('16', 12),
  })
  expect(view.rush!.handoverAt).toBeLessThanOrEqual(wall('16', 12))
  expect(view.run!.changes.map(change => change.jobId)).not.toContain('rush')
  await keepWhatIf(desk, { runId })
  expect(await desk.store.read.job.count()).toBe(1)
})

const longer = (moreMin = 1440) => ({ kind: 'cureLonger', jobId: job.id, moreMin }) as const
const holdMin = async () =>
  (await getJob(desk, { id: job.id })).steps.find(step => step.kind === 'hold')!.endAt -
  (await getJob(desk, { id: job.id })).steps.find(step => step.kind === 'hold')!.startAt

test('a longer cure: what it does to its own promise, and by whose profile every car would get it', async () => {
  expect(await curingCars(desk)).toMatchObject([{ jobId: job.id }])
  const { view } = await asked(longer())
  expect(view.promises[0]!.bestAt).toBeGreaterThan(job.promisedAt)
  expect(view.cures).toMatchObject({ name: 'Ovrel Two' })
  expect(await getJob(desk, { id: job.id })).toEqual(job)
})

test('kept, the car has the longer cure and its place for it, in one act, and the history says so', async () => {
  const before = await holdMin()
  const { runId } = await asked(longer())
  expect(await keepWhatIf(desk, { runId })).toEqual({ cars: 1 })
  expect(await holdMin()).toBe(before + 1440)
  const after = await getJob(desk, { id: job.id })
  expect(after.handoverAt).toBeGreaterThan(job.handoverAt)
  expect(after.promisedAt).toBe(job.promisedAt)
  expect(await brokenLaws(desk)).toEqual([])
  const { lines } = await history(desk, { entities: ['job'] })
  expect(lines.map(line => line.words).join()).toContain('takes 24 h longer')
})

test('a cure longer by less than the car waits anyway is written too', async () => {
  const before = await holdMin()
  const { runId } = await asked(longer(15))
  await keepWhatIf(desk, { runId })
  expect(await holdMin()).toBe(before + 15)
  expect(await brokenLaws(desk)).toEqual([])
})

test('a car that is here cures longer without being moved, and its open forms are stale', async () => {
  desk.setNow('2026-04-16T12:00:00Z')
  await arrive(desk, { id: job.id, version: job.version })
  const here = await getJob(desk, { id: job.id })
  const before = await holdMin()
  const { runId } = await asked(longer())
  expect(await keepWhatIf(desk, { runId })).toEqual({ cars: 0 })
  expect(await holdMin()).toBe(before + 1440)
  expect((await getJob(desk, { id: job.id })).version).toBe(here.version + 1)
})

test('a pinned car is given no cure that its place has no room for; nothing is saved', async () => {
  await pinJob(desk, { id: job.id, version: job.version, pinned: true })
  const before = await holdMin()
  const { runId } = await asked(longer())
  await expect(keepWhatIf(desk, { runId })).rejects.toMatchObject({ code: 'not-laid', field: 'jobId' })
  expect(await holdMin()).toBe(before)
})

test('two windows: what one keeps, the other cannot keep again; what one asks anew, the other cannot keep', async () => {
  const first = await asked(longer())
  const second = await asked(longer(60))
  await expect(keepWhatIf(desk, { runId: first.runId })).rejects.toMatchObject({ code: 'stale' })
  await keepWhatIf(desk, { runId: second.runId })
  await expect(keepWhatIf(desk, { runId: second.runId })).rejects.toMatchObject({ code: 'stale' })
  expect((await whatIfStands(desk)).run).toBeNull()
})

test('a supposition that is stopped keeps what it has', async () => {
  await beginWhatIf(desk, { days: 14, what: longer() })
  await stopWhatIf(desk)
  expect((await whatIfStands(desk)).run).toMatchObject({ working: false, stopped: true })
})

test('what cannot be supposed is refused at its field', async () => {
  const bay = { kind: 'bayClosed', bayId: layBay() } as const
  const refused = (what: WhatIfInput['what']) => beginWhatIf(desk, { days: 14, what })
  await expect(refused({ ...bay, fromAt: wall('17', 0), toAt: wall('16', 0) })).rejects.toMatchObject({
    field: 'toAt',
  })
  await expect(refused({ ...bay, fromAt: wall('14', 0), toAt: wall('14', 9) })).rejects.toMatchObject({
    field: 'toAt',
  })
  await expect(
    refused({ ...bay, bayId: 'none', fromAt: wall('16', 0), toAt: wall('17', 0) }),
  ).rejects.toMatchObject({ code: 'missing' })
  await expect(refused({ kind: 'cureLonger', jobId: 'none', moreMin: 60 })).rejects.toMatchObject({
    code: 'missing',
  })
  await expect(refused(longer(40_320))).rejects.toMatchObject({ code: 'cure-long', field: 'moreMin' })
  await expect(
    refused({ ...bay, fromAt: wall('16', 0), toAt: wall('16', 0) + 400 * 1440 }),
  ).rejects.toMatchObject({ code: 'span-far', field: 'toAt' })
  await expect(
    refused({ kind: 'away', crewId: 'none', fromAt: wall('16', 0), toAt: wall('17', 0) }),
  ).rejects.toMatchObject({ code: 'missing', field: 'crewId' })
})
