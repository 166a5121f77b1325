import { beforeEach, expect, test } from 'vitest'
import { atWall, dateOf } from '../../../main/domain/calendar/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { getCustomer } from '../../../main/services/records/customers.ts'
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

const zone = 'America/New_York'
const wall = (date: string, hour: number) => atWall(`2026-04-${date}`, hour * 60, zone)

/** What board, strip, morning sheet, job and customer each say of a promise. */
async function saidOf(id: string) {
  const job = await getJob(desk, { id })
  const date = dateOf(job.handoverAt, zone)
  const board = await boardRange(desk, { fromDate: dateOf(job.dropOffAt, zone), days: 7 })
  const { customerId } = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  const { visits } = await getCustomer(desk, { id: customerId })
  const told = ({ standing, handoverAt }: { standing: string; handoverAt: number }) =>
    `${standing} ${handoverAt}`
  return {
    job: told(job),
    board: [...new Set(board.stays.filter(stay => stay.jobId === id).map(told))].join(),
    morning: (await morningSheet(desk, { date })).handovers
      .filter(car => car.jobId === id)
      .map(told)
      .join(),
    customer: visits
      .filter(visit => visit.jobId === id)
      .map(told)
      .join(),
    strip: board.slips
      .filter(slip => slip.jobId === id)
      .map(told)
      .join(),
  }
}

async function expectSaid(id: string, standing: string) {
  const said = await saidOf(id)
  expect(said.job).toMatch(standing)
  const strip = standing === 'kept' ? '' : said.job
  expect(said).toEqual({ job: said.job, board: said.job, morning: said.job, customer: said.job, strip })
}

test('Board, strip, morning sheet, job and customer say the same of a promise, whatever becomes of it', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay' })
  await expectSaid(job.id, 'kept')
  const polisher = job.steps[1]!.crew[0]!.id
  await saveAbsence(desk, {
    crewId: polisher,
    fromAt: wall('15', 8),
    toAt: wall('15', 18),
    reason: '',
    accepted: true,
  })
  await expectSaid(job.id, 'lacking')
  // Here, it is reckoned with when its people are back.
  let { version } = await arrive(desk, { id: job.id, version: job.version })
  await expectSaid(job.id, 'late')
  ;({ version } = await startStep(desk, { id: job.id, version, position: 0 }))
  expect(version).toBe(job.version + 2)
  await expectSaid(job.id, 'late')
})

test('A promise beyond the days shown is judged too: a bay closed in two months is told today', async () => {
  const askedDate = '2026-06-24'
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate })
  const at = atWall(askedDate, 0, zone)
  await saveClosure(desk, {
    bayId: job.steps[0]!.bayId,
    fromAt: at,
    toAt: at + 1440,
    reason: '',
    accepted: true,
  })
  const { slips } = await boardRange(desk, { fromDate: '2026-04-15', days: 1 })
  expect(slips).toMatchObject([{ jobId: job.id, standing: 'lacking' }])
})

test('A car that overstays takes the bay from the next one, whose promise is told as not kept', async () => {
  const first = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  const next = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1, kind: 'askedDay' })
  expect([first.steps[0]!.bayName, next.steps[0]!.bayName]).toEqual(['Bay 1', 'Bay 1'])
  const { version } = await arrive(desk, { id: first.id, version: first.version })
  await startStep(desk, { id: first.id, version, position: 0 })
  await expectSaid(next.id, 'kept')
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((next.dropOffAt + 14) * 60_000).toString())
  expect((await getJob(desk, { id: next.id })).standing).toBe('kept')
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((next.dropOffAt + 15) * 60_000).toString())
  await expectSaid(next.id, 'late')
})
