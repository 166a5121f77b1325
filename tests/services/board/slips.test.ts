import { beforeEach, expect, test } from 'vitest'
import { atWall, dateOf } from '../../../main/domain/calendar/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { jobCure } from '../../../main/services/job/jobCure.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { saveClosure } from '../../../main/services/setUp/bayClosures.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const wall = (date: string, hour: number) => atWall(`2026-04-${date}`, hour * 60, 'America/New_York')
const slips = async () => (await boardRange(desk, { fromDate: '2026-04-15', days: 1 })).slips

test('A stay moved past its promise is named among the promises that slip, whatever day is shown', async () => {
  const askedDate = '2026-04-20'
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate })
  expect(await slips()).toEqual([])
  const place = { position: 0, bayId: shop.bays['Bay 1']!, startAt: wall('21', 10) }
  await moveStay(desk, { jobId: job.id, version: job.version, ...place })
  expect(await slips()).toEqual([
    {
      jobId: job.id,
      plate: 'KFR 204',
      customerName: 'Ines Vale',
      promisedAt: job.promisedAt,
      handoverAt: wall('21', 11),
      standing: 'late',
      unfetchedAt: null,
      lack: null,
    },
  ])
})

test('Somebody away leaves the promise of a booked car uncovered, everywhere it is told, until it is planned again', async () => {
  const askedDate = '2026-04-16'
  const job = await bookJob(desk, shop, { treatments: ['twoLayers'], kind: 'askedDay', askedDate })
  const coater = job.steps[2]!.crew[0]!
  const away = { fromAt: wall('16', 0), toAt: wall('17', 0), reason: 'ill' }
  await saveAbsence(desk, { crewId: coater.id, ...away, accepted: true })

  const words = `${coater.name} is away Thursday 09:30 to Thursday 11:00 and missing from "First layer".`
  const told = await getJob(desk, { id: job.id })
  expect(told).toMatchObject({ standing: 'lacking', lack: 'somebody is missing', lateMin: 0 })
  expect(told.conflicts).toContain(words)
  expect(await slips()).toMatchObject([{ jobId: job.id, standing: 'lacking' }])
  const sheet = await morningSheet(desk, { date: askedDate })
  expect(sheet.handovers).toMatchObject([{ jobId: job.id, standing: 'lacking', lack: 'somebody is missing' }])

  const { slip } = await jobCure(desk, { id: job.id })
  expect(slip).toMatchObject({ lateMin: 0, message: null })
  const { position, bayId, startAt } = slip!.place!
  await moveStay(desk, { jobId: job.id, version: told.version, position, bayId, startAt })
  expect(await getJob(desk, { id: job.id })).toMatchObject({ standing: 'kept', lack: null })
  expect(await slips()).toEqual([])
})

test('Who is away outside the hours of the step, or only for some minutes of it, is not missed', async () => {
  const askedDate = '2026-04-16'
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate })
  const crewId = job.steps[0]!.crew[0]!.id
  const minutes = { fromAt: wall('16', 9) - 14, toAt: wall('16', 18), reason: 'an errand' }
  await saveAbsence(desk, { crewId, ...minutes, accepted: true })
  expect(await getJob(desk, { id: job.id })).toMatchObject({ standing: 'kept', lack: null, conflicts: [] })
  const quarter = { fromAt: wall('16', 8), toAt: wall('16', 8) + 15, reason: 'late' }
  await saveAbsence(desk, { crewId, ...quarter, accepted: true })
  expect(await getJob(desk, { id: job.id })).toMatchObject({ lack: 'somebody is missing' })
})

test('A bay that is down is recorded over its booked cars; each is told, and has its way to another', async () => {
  const askedDate = '2026-04-16'
  const job = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay', askedDate })
  const polishing = job.steps[1]!
  const down = { bayId: polishing.bayId, fromAt: wall('15', 0), toAt: wall('18', 0), reason: 'Lamp failed' }
  await expect(saveClosure(desk, down)).rejects.toMatchObject({ code: 'touches-bookings' })
  await saveClosure(desk, { ...down, accepted: true })
  const told = await getJob(desk, { id: job.id })
  expect(told).toMatchObject({ lack: 'its bay is closed', lateMin: 0 })
  expect(told.conflicts.join(' ')).toContain('(Lamp failed)')
  expect(await slips()).toMatchObject([
    { jobId: job.id, standing: 'lacking', lack: expect.stringContaining('is closed') },
  ])
  const { slip } = await jobCure(desk, { id: job.id })
  const { position, bayId, startAt } = slip!.place!
  await moveStay(desk, { jobId: job.id, version: told.version, position, bayId, startAt })
  const mended = await getJob(desk, { id: job.id })
  expect(mended).toMatchObject({ standing: 'kept', lack: null, conflicts: [] })
  expect(mended.steps[1]!.bayId).not.toBe(polishing.bayId)
  expect(await slips()).toEqual([])
})

test('A car that is ready and not fetched is told on the board, the job and the sheet until it leaves', async () => {
  const { id, version } = await bookJob(desk, shop, { treatments: ['wash'], kind: 'soonest' })
  const { dropOffAt, promisedAt } = await getJob(desk, { id })
  const at = (minute: number) =>
    desk.setNow(Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toString())
  at(dropOffAt)
  await arrive(desk, { id, version })
  await startStep(desk, { id, version: version + 1, position: 0 })
  at(promisedAt)
  await finishStep(desk, { id, version: version + 2, position: 0 })
  expect(await slips()).toEqual([])
  at(promisedAt + 60)
  expect(await slips()).toMatchObject([{ jobId: id, standing: 'unfetched', unfetchedAt: promisedAt }])
  expect(await getJob(desk, { id })).toMatchObject({ unfetchedAt: promisedAt, lateMin: 0 })
  const date = dateOf(promisedAt, 'America/New_York')
  expect((await morningSheet(desk, { date })).handovers).toMatchObject([{ unfetchedAt: promisedAt }])
  await handOver(desk, { id, version: version + 3 })
  expect(await slips()).toEqual([])
  expect(await getJob(desk, { id })).toMatchObject({ unfetchedAt: null })
})
