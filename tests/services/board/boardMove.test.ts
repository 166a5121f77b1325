import { beforeEach, expect, test } from 'vitest'
import { atWall, zonedOf } from '../../../main/domain/calendar/index.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { moveStay, tryMove } from '../../../main/services/board/boardMove.ts'
import type { MoveInput } from '../../../main/services/board/inputs.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { bookJob } from '../bookJob.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let job: JobView

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

const zone = 'America/New_York'
const clock = (at: number) => zonedOf(at, zone).toPlainDateTime().toString().slice(8, 16)
const wall = (date: string, hour: number) => atWall(`2026-04-${date}`, hour * 60, zone)

function to(bay: string, startAt: number, position = 0): MoveInput {
  return { jobId: job.id, version: job.version, position, bayId: shop.bays[bay]!, startAt }
}

async function placed(input: MoveInput) {
  const move = await tryMove(desk, input)
  if (!move.ok) throw new Error(move.reasons.join(' '))
  return move
}

async function refused(input: MoveInput) {
  const move = await tryMove(desk, input)
  if (move.ok) throw new Error('This place should have been refused.')
  return move
}

test('A whole job dragged a day on takes all its steps along', async () => {
  const move = await placed(to('Bay 1', wall('17', 8)))
  expect(clock(move.stays[0]!.fromAt)).toBe('17T08:00')
  expect(move.handoverAt - wall('17', 8)).toBe(job.handoverAt - job.stays[0]!.fromAt)
  expect(move.promiseKept).toBe(false)
  expect(move.words.join(' ')).toContain('Drop-off moves from Thursday 08:00 to Friday 08:00.')
  expect(move.words.join(' ')).toContain('tell the customer')
  // Nothing is saved by trying.
  expect(await getJob(desk, { id: job.id })).toEqual(job)
  const saved = await moveStay(desk, to('Bay 1', wall('17', 8)))
  const after = await getJob(desk, { id: job.id })
  expect(after).toMatchObject({
    version: saved.version,
    handoverAt: move.handoverAt,
    promisedAt: job.promisedAt,
  })
  expect(after.lateMin).toBeGreaterThan(0)
  expect(after.stays.map(stay => [stay.bayName, stay.fromAt])).toEqual(
    move.stays.map(stay => [stay.bayName, stay.fromAt]),
  )
  expect(await brokenLaws(desk)).toEqual([])
})

test('A later stay moves alone: what comes before stays, and its bay is kept until the move', async () => {
  const second = job.stays[1]!
  const move = await placed(to('Bay 2', second.fromAt + 60, second.position!))
  expect(move.stays[0]).toMatchObject({ fromAt: job.stays[0]!.fromAt, toAt: second.fromAt + 60 })
  expect(move.stays[1]).toMatchObject({ bayName: 'Bay 2', fromAt: second.fromAt + 60 })
  await moveStay(desk, to('Bay 2', second.fromAt + 60, second.position!))
  expect(await brokenLaws(desk)).toEqual([])
})

test('A place is refused with what stands in the way, and the nearest good one is named', async () => {
  const other = await bookJob(desk, shop, {
    treatments: ['wash'],
    vehicle: 1,
    kind: 'askedDay',
    askedDate: '2026-04-17',
  })
  const taken = await refused(to('Bay 1', other.stays[0]!.fromAt))
  expect(taken.reasons).toEqual(['Bay 1 is taken until Friday 09:00 by LOW 771 (job 2).'])
  expect(taken.nearest).toEqual({ bayId: shop.bays['Bay 1'], startAt: wall('17', 9) })

  const unfit = await refused(to('Bay 4', wall('17', 10)))
  expect(unfit.reasons).toEqual(['Bay 4 is not equipped for washing, which Wash needs.'])
  expect(unfit.nearest).toEqual({ bayId: shop.bays['Bay 1'], startAt: wall('17', 10) })

  const night = await refused(to('Bay 1', wall('16', 20)))
  expect(night.reasons.join(' ')).toContain('needs 1 h of opening hours from Thursday 20:00')
  expect(night.nearest).toEqual({ bayId: shop.bays['Bay 1'], startAt: wall('16', 17) })

  const past = await refused(to('Bay 1', wall('15', 7)))
  expect(past.reasons).toEqual(['07:00 is over; it may start from 08:00.'])

  for (const { nearest } of [taken, unfit, night, past]) {
    expect(nearest).not.toBeNull()
    expect((await tryMove(desk, { ...to('', 0), ...nearest! })).ok).toBe(true)
  }
  await expect(moveStay(desk, to('Bay 1', other.stays[0]!.fromAt))).rejects.toMatchObject({
    code: 'refused',
    field: 'startAt',
  })
  expect(await getJob(desk, { id: job.id })).toEqual(job)
})

test('The nearest place is the nearest: every grid point closer by is refused', async () => {
  await bookJob(desk, shop, {
    treatments: ['correction'],
    vehicle: 1,
    kind: 'askedDay',
    askedDate: '2026-04-17',
  })
  await bookJob(desk, shop, { treatments: ['wash'], vehicle: 2, kind: 'askedDay', askedDate: '2026-04-17' })
  const wish = to('Bay 1', wall('17', 8) + 30)
  const { nearest } = await refused(wish)
  const reach = Math.abs(nearest!.startAt - wish.startAt)
  for (let away = 15; away < reach; away += 15)
    for (const startAt of [wish.startAt - away, wish.startAt + away])
      expect((await tryMove(desk, { ...wish, startAt })).ok, clock(startAt)).toBe(false)
})

test('A layer may change bays once the first is tack-free, but not leave its window', async () => {
  const layer = job.steps.find(step => step.name === 'Second layer')!
  const before = job.steps[layer.position - 1]!
  // Tack-free after 60 min, which is when the window opens.
  expect(before.minutes).toBe(60)
  const move = await placed(to('Bay 4', layer.startAt, layer.position))
  expect(move.stays.at(-1)).toMatchObject({ bayName: 'Bay 4', fromAt: layer.startAt })
  const soon = await refused(to('Bay 4', before.endAt - 15, layer.position))
  expect(soon.reasons[0]).toMatch(/"Second layer" may start from .*, after "Cure before the next layer"/)
  // 60 to 240 min after the first: 180 min after the hold.
  const late = await refused(to('Bay 4', before.endAt + 195, layer.position))
  expect(late.reasons[0]).toMatch(/"Second layer" must start by .*, after "Cure before the next layer"/)
})

test('What has begun stays, and a hold stays with its coat', async () => {
  const hold = job.steps.find(step => step.kind === 'hold')!
  expect((await refused(to('Bay 4', hold.startAt, hold.position))).reasons[0]).toContain(
    'stays where its coat was laid',
  )
  desk.setNow('2026-04-16T12:00:00Z')
  let { version } = await arrive(desk, { id: job.id, version: job.version })
  ;({ version } = await startStep(desk, { id: job.id, version, position: 0 }))
  const move = await tryMove(desk, { ...to('Bay 1', wall('16', 10)), version })
  expect(move).toMatchObject({
    ok: false,
    reasons: ['"Wash" or what follows has begun, so it stays where it is.'],
  })
  const { stays } = await boardRange(desk, { fromDate: '2026-04-16', days: 2 })
  expect(stays.map(stay => stay.movable)).toEqual([false, ...stays.slice(1).map(() => true)])
})

test('Of two who drag at once, the second looks again', async () => {
  const input = to('Bay 1', wall('17', 8))
  const results = await Promise.allSettled([moveStay(desk, input), moveStay(desk, input)])
  expect(results.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
  await expect(tryMove(desk, input)).rejects.toMatchObject({ code: 'stale' })
})

test('A dragged stay can be dragged back', async () => {
  await moveStay(desk, to('Bay 1', wall('17', 8)))
  job = await getJob(desk, { id: job.id })
  await moveStay(desk, to('Bay 1', wall('16', 8)))
  const back = await getJob(desk, { id: job.id })
  expect(clock(back.dropOffAt)).toBe('16T08:00')
  expect(back.lateMin).toBe(0)
  expect(await brokenLaws(desk)).toEqual([])
})
