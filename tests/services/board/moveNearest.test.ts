import { beforeEach, expect, test } from 'vitest'
import { atWall, zonedOf } from '../../../main/domain/calendar/index.ts'
import { moveStay, tryMove } from '../../../main/services/board/boardMove.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
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
const clock = (at: number) => zonedOf(at, zone).toPlainDateTime().toString().slice(8, 16)

async function nearest(job: JobView, position: number, bay: string, startAt: number) {
  const input = { jobId: job.id, version: job.version, position, bayId: shop.bays[bay]!, startAt }
  const tried = await tryMove(desk, input)
  if (tried.ok || !tried.nearest) throw new Error(`There should be a nearest place: ${JSON.stringify(tried)}`)
  return { ...input, ...tried.nearest }
}

test('A car that waits in a bay somebody else wants is offered a place before that, not one after another', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'], kind: 'askedDay' })
  // The car waits in bay 1 after its wash, and the next one wants that bay at 10:00.
  await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1, kind: 'askedDay' })
  const next = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 2, kind: 'askedDay' })
  expect(next.steps[0]!.bayName).toBe('Bay 1')
  let { version } = await arrive(desk, { id: job.id, version: job.version })
  ;({ version } = await startStep(desk, { id: job.id, version, position: 0 }))
  desk.setNow('2026-04-15T12:52:00Z')
  await finishStep(desk, { id: job.id, version, position: 0 })
  const waiting = await getJob(desk, { id: job.id })
  const place = await nearest(waiting, 1, 'Bay 2', wall('16', 15))
  expect(clock(place.startAt)).toBe('15T09:00')
  expect((await moveStay(desk, place)).version).toBe(waiting.version + 1)
})

test('Where the same car is here for another job, the nearest place lies before or after that visit', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate: '2026-04-17' })
  const other = await bookJob(desk, shop, {
    treatments: ['twoLayers'],
    kind: 'askedDay',
    askedDate: '2026-04-16',
  })
  expect([clock(other.dropOffAt), clock(other.handoverAt)]).toEqual(['16T08:00', '16T17:30'])
  const refused = await tryMove(desk, {
    jobId: job.id,
    version: job.version,
    position: 0,
    bayId: shop.bays['Bay 1']!,
    startAt: wall('16', 10),
  })
  expect(refused).toMatchObject({
    ok: false,
    reasons: ['KFR 204 is here for job 2 already, Thursday 08:00 to Thursday 17:30.'],
  })
  // Thursday 10:00 is nearest to the evening before, when an hour of opening is left, than to Friday.
  const place = await nearest(job, 0, 'Bay 1', wall('16', 10))
  expect(clock(place.startAt)).toBe('15T17:00')
  await moveStay(desk, place)
})

test('A car in two visits at once is refused when it is dragged there', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'], kind: 'askedDay', askedDate: '2026-04-17' })
  await bookJob(desk, shop, { treatments: ['twoLayers'], kind: 'askedDay', askedDate: '2026-04-16' })
  const moving = moveStay(desk, {
    jobId: job.id,
    version: job.version,
    position: 0,
    bayId: shop.bays['Bay 1']!,
    startAt: wall('16', 11),
  })
  await expect(moving).rejects.toThrow('KFR 204 is here for job 2 already')
})
