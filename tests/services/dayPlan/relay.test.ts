import { beforeEach, describe, expect, test } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { acceptRelay } from '../../../main/services/dayPlan/accept.ts'
import { pinJob } from '../../../main/services/dayPlan/pin.ts'
import {
  beginRelay,
  dropRelay,
  relayRuns,
  relayStands,
  stopRelay,
} from '../../../main/services/dayPlan/relay.ts'
import { takeBackRelay } from '../../../main/services/dayPlan/takeBack.ts'
import { history } from '../../../main/services/history/history.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { getJob, type JobView } from '../../../main/services/job/jobView.ts'
import { listCrew, saveCrew } from '../../../main/services/setUp/crew.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { bookJob } from '../bookJob.ts'
import { brokenLaws } from '../floorLaws.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let job: JobView

const zone = 'America/New_York'
const wall = (date: string, hour: number) => atWall(`2026-04-${date}`, hour * 60, zone)
const days = 7

// Wednesday 15 April 2026, 08:00 in New York; a correction with two layers comes on Thursday, and its second stay was
// dragged two hours later than it had to be.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  const booked = await bookJob(desk, shop, {
    treatments: ['correction', 'twoLayers'],
    kind: 'askedDay',
    askedDate: '2026-04-16',
  })
  const second = booked.stays[1]!
  await moveStay(desk, {
    jobId: booked.id,
    version: booked.version,
    position: second.position!,
    bayId: second.bayId,
    startAt: second.fromAt + 120,
  })
  job = await getJob(desk, { id: booked.id })
})

async function laid() {
  const { runId } = await beginRelay(desk, { days })
  await relayRuns.ends(desk.store)
  const { run } = await relayStands(desk, { days })
  return { runId, run: run! }
}

const stays = (view: JobView) => view.stays.map(stay => [stay.bayId, stay.fromAt, stay.toAt])

describe('the floor laid anew', () => {
  test('proposes what is better, says what it gains, and changes nothing by itself', async () => {
    const { run } = await laid()
    expect(run).toMatchObject({ working: false, proven: true, cars: 1 })
    expect(run.objective).toEqual(run.bound)
    const [change, ...more] = run.changes
    expect(more).toEqual([])
    expect(change).toMatchObject({ jobId: job.id, plate: job.vehicle.plate, with: [] })
    expect(change!.was!.lateMin).toBe(job.handoverAt - job.promisedAt)
    expect(change!.becomes.lateMin).toBe(0)
    expect(change!.becomes.blockedMin).toBeLessThan(change!.was!.blockedMin)
    // Nobody is asked to come sooner than agreed.
    expect(change!.to.dropOffAt).toBeGreaterThanOrEqual(change!.from!.dropOffAt)
    // With one car, all cars together cost what it does.
    expect(run.present).toMatchObject(change!.was!)
    expect(run.objective).toMatchObject({ ...change!.becomes, changes: 1 })
    expect(await getJob(desk, { id: job.id })).toEqual(job)
  })

  test('accepted, the car moves in one act, and one act takes it back', async () => {
    const { runId } = await laid()
    expect(await acceptRelay(desk, { runId, jobIds: [job.id] })).toEqual({ cars: 1 })
    const after = await getJob(desk, { id: job.id })
    expect(after.lateMin).toBe(0)
    expect(await brokenLaws(desk)).toEqual([])
    const { run, takeBack } = await relayStands(desk, { days })
    expect(run).toBeNull()
    expect(takeBack).toMatchObject({ cars: 1 })
    expect(await takeBackRelay(desk)).toEqual({ cars: 1 })
    expect(stays(await getJob(desk, { id: job.id }))).toEqual(stays(job))
    expect((await relayStands(desk, { days })).takeBack).toBeNull()
    await expect(takeBackRelay(desk)).rejects.toMatchObject({ code: 'stale' })
    const { lines } = await history(desk, { entities: ['floor'] })
    expect(lines).toHaveLength(2)
  })

  test('a car that was changed after it moved is not taken back', async () => {
    const { runId } = await laid()
    await acceptRelay(desk, { runId, jobIds: [job.id] })
    await pinJob(desk, { id: job.id, version: job.version + 1, pinned: true })
    expect((await relayStands(desk, { days })).takeBack).toBeNull()
    await expect(takeBackRelay(desk)).rejects.toMatchObject({ code: 'stale' })
  })

  test('is proven where nothing is better', async () => {
    const { runId } = await laid()
    await acceptRelay(desk, { runId, jobIds: [job.id] })
    const { run } = await laid()
    expect(run).toMatchObject({ proven: true, changes: [] })
  })

  test('a car that was changed meanwhile, or came, is refused with the way out; nothing is saved', async () => {
    const { runId } = await laid()
    await pinJob(desk, { id: job.id, version: job.version, pinned: true })
    await expect(acceptRelay(desk, { runId, jobIds: [job.id] })).rejects.toMatchObject({ code: 'stale' })
    const again = await laid()
    expect(again.run.changes).toEqual([])
    await pinJob(desk, { id: job.id, version: job.version + 1, pinned: false })
    const third = await laid()
    expect(third.run.changes).toHaveLength(1)
    desk.setNow('2026-04-16T12:00:00Z')
    await arrive(desk, { id: job.id, version: job.version + 2 })
    await expect(acceptRelay(desk, { runId: third.runId, jobIds: [job.id] })).rejects.toMatchObject({
      code: 'stale',
    })
  })

  test('two windows: what one accepts or pins, the other cannot accept or pin again', async () => {
    const { runId } = await laid()
    await acceptRelay(desk, { runId, jobIds: [job.id] })
    await expect(acceptRelay(desk, { runId, jobIds: [job.id] })).rejects.toMatchObject({ code: 'stale' })
    const pin = { id: job.id, version: job.version + 1, pinned: true }
    await pinJob(desk, pin)
    await expect(pinJob(desk, { ...pin, pinned: false })).rejects.toMatchObject({ code: 'stale' })
    expect((await relayStands(desk, { days })).pinned).toMatchObject([{ jobId: job.id }])
  })

  test('a car that came is not pinned', async () => {
    desk.setNow('2026-04-16T12:00:00Z')
    await arrive(desk, { id: job.id, version: job.version })
    await expect(pinJob(desk, { id: job.id, version: job.version + 1, pinned: true })).rejects.toMatchObject({
      code: 'not-booked',
    })
  })

  test('left as it is, the proposal is forgotten', async () => {
    await laid()
    await dropRelay(desk)
    expect((await relayStands(desk, { days })).run).toBeNull()
    expect(await getJob(desk, { id: job.id })).toEqual(job)
  })

  test('a place taken meanwhile is refused in words', async () => {
    const { runId } = await laid()
    // Nobody can coat in the time the proposal wants somebody.
    for (const name of ['Jo', 'Sal'])
      await saveAbsence(desk, {
        crewId: shop.crew[name]!,
        fromAt: wall('16', 0),
        toAt: wall('18', 0),
        reason: '',
        accepted: true,
      })
    await expect(acceptRelay(desk, { runId, jobIds: [job.id] })).rejects.toThrow(
      /The floor has changed.*Lay the floor again\./,
    )
    const now = await getJob(desk, { id: job.id })
    expect(stays(now)).toEqual(stays(job))
    expect((await relayStands(desk, { days })).broken).toMatchObject([{ jobId: job.id }])
  })

  test('an older proposal and a car it leaves alone are refused', async () => {
    const old = await laid()
    const now = await laid()
    await expect(acceptRelay(desk, { runId: old.runId, jobIds: [job.id] })).rejects.toMatchObject({
      code: 'stale',
    })
    await expect(acceptRelay(desk, { runId: now.runId, jobIds: ['nobody'] })).rejects.toMatchObject({
      code: 'missing',
    })
  })

  test('a pinned car and one that is here are left out', async () => {
    await pinJob(desk, { id: job.id, version: job.version, pinned: true })
    const { coming, pinned } = await relayStands(desk, { days })
    expect(coming).toBe(0)
    expect(pinned).toMatchObject([{ jobId: job.id }])
    await pinJob(desk, { id: job.id, version: job.version + 1, pinned: false })
    desk.setNow('2026-04-16T12:00:00Z')
    await arrive(desk, { id: job.id, version: job.version + 2 })
    expect((await relayStands(desk, { days })).coming).toBe(0)
  })
})

test('somebody from outside who was asked in time comes, although it would be too late to ask now', async () => {
  for (const name of ['Jo', 'Sal']) {
    const id = shop.crew[name]!
    const person = (await listCrew(desk)).find(each => each.id === id)!
    await saveCrew(desk, { ...person, noticeDays: 9 })
  }
  expect((await relayStands(desk, { days })).broken).toEqual([])
})

test('a stop ends it at once; what was found stands', async () => {
  // A week that takes long to prove: the same wish from many cars.
  for (let i = 1; i < 4; i++)
    await bookJob(desk, shop, {
      treatments: ['correction', 'twoLayers'],
      vehicle: i % shop.vehicles.length,
      kind: 'askedDay',
      askedDate: '2026-04-16',
    })
  await beginRelay(desk, { days: 31 })
  await stopRelay(desk)
  const { run } = await relayStands(desk, { days: 31 })
  expect(run).toMatchObject({ working: false, stopped: true })
})
