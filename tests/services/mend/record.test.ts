import { beforeEach, expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { recordOut } from '../../../main/services/mend/record.ts'
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

const wall = (hour: number) => atWall('2026-04-15', hour * 60, 'America/New_York')
const absences = async () =>
  (await desk.store.read.crewAbsence.findMany({ orderBy: { fromAt: 'asc' } })).map(({ fromAt, toAt }) => [
    fromAt,
    toAt,
  ])

test('A sick call in the middle of a step is written down at once, and names the promise that hangs on it', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay' })
  const { version } = await arrive(desk, { id: job.id, version: job.version })
  await startStep(desk, { id: job.id, version, position: 0 })
  desk.setNow('2026-04-15T12:20:00Z')
  const crewId = job.steps[0]!.crew[0]!.id
  const out = { kind: 'person' as const, crewId, fromAt: wall(8) + 20, toAt: wall(18), reason: 'ill' }
  expect(await recordOut(desk, out)).toEqual({ jobIds: [job.id] })
  expect(await getJob(desk, { id: job.id })).toMatchObject({
    standing: 'lacking',
    lack: 'somebody is missing',
  })
  await expect(recordOut(desk, out)).rejects.toMatchObject({ code: 'as-before' })
})

test('What was noted before for a part of the time stays, and the rest is added around it', async () => {
  const { id: crewId } = await desk.store.read.crewMember.findFirstOrThrow()
  await saveAbsence(desk, { crewId, fromAt: wall(12), toAt: wall(13), reason: 'dentist' })
  const out = { kind: 'person' as const, crewId, fromAt: wall(8), toAt: wall(18), reason: 'ill' }
  expect(await recordOut(desk, out)).toEqual({ jobIds: [] })
  expect(await absences()).toEqual([
    [wall(8), wall(12)],
    [wall(12), wall(13)],
    [wall(13), wall(18)],
  ])
})

test('A bay is down over the cars booked in it; only what makes no sense is refused', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay' })
  const { bayId } = job.steps[1]!
  const down = { kind: 'bay' as const, bayId, fromAt: wall(8), toAt: wall(18), reason: 'Lamp failed' }
  expect(await recordOut(desk, down)).toEqual({ jobIds: [job.id] })
  expect(await getJob(desk, { id: job.id })).toMatchObject({ lack: 'its bay is closed' })
  await expect(recordOut(desk, { ...down, toAt: wall(8) })).rejects.toMatchObject({ code: 'span-order' })
  await expect(recordOut(desk, { ...down, toAt: wall(8) + 900 * 1440 })).rejects.toMatchObject({
    code: 'span-far',
  })
  await expect(recordOut(desk, { ...down, bayId: 'none' })).rejects.toMatchObject({ code: 'missing' })
})
