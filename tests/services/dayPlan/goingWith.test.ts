import { beforeEach, expect, test } from 'vitest'
import { layFloor } from '../../../main/domain/schedule/index.ts'
import { goingWith } from '../../../main/services/dayPlan/goingWith.ts'
import { layable } from '../../../main/services/dayPlan/relayFloor.ts'
import { act } from '../../../main/services/desk/desk.ts'
import { jobRows } from '../../../main/services/floor/jobRows.ts'
import { loadFloor } from '../../../main/services/floor/loadFloor.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { lend } from '../../../main/services/job/lending.ts'
import { saveLendable } from '../../../main/services/setUp/lendables.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let thingId: string

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await saveLendable(desk, { name: 'Blue loan car', kind: 'loan car' })
  thingId = (await desk.store.read.lendable.findFirstOrThrow()).id
})

const wash = (vehicle: number, askedDate: string) =>
  bookJob(desk, shop, { treatments: ['wash'], vehicle, kind: 'askedDay', askedDate })
const borrow = ({ id, version }: JobView) => lend(desk, { id, version, kind: 'loan car', on: true })

async function floorNow() {
  return loadFloor(desk.store.read, desk.now(), desk.now() + 7 * 1440)
}
async function goingNow(...jobs: JobView[]) {
  const floor = await floorNow()
  const rows = await jobRows(desk.store.read, floor, { id: { in: jobs.map(job => job.id) } })
  return goingWith(desk.store.read, floor, rows)
}
async function taskNow() {
  return (await layable(desk.store.read, await floorNow(), desk.now() + 7 * 1440)).task
}

test('what is lent goes with each of the cars laid; where another keeps it, for the time that one is here', async () => {
  const first = await wash(0, '2026-04-16')
  const second = await wash(1, '2026-04-16')
  for (const job of [first, second]) await borrow(job)
  const both = await goingNow(first, second)
  expect(both.things.get(first.id)).toEqual([shop.vehicles[0], thingId])
  expect(both.things.get(second.id)).toEqual([shop.vehicles[1], thingId])
  expect(both.lent).toEqual([])
  const { dropOffAt, handoverAt } = second
  expect((await goingNow(first)).lent).toEqual([{ thing: thingId, from: dropOffAt, to: handoverAt }])
})

test('a place held for a caller keeps what is lent with it as long as it is held', async () => {
  const first = await wash(0, '2026-04-16')
  const second = await wash(1, '2026-04-16')
  for (const job of [first, second]) await borrow(job)
  const heldUntilAt = desk.now() + 30
  await act(desk, tx => tx.job.update({ where: { id: second.id }, data: { status: 'held', heldUntilAt } }))
  expect((await goingNow(first)).lent).toHaveLength(1)
  desk.setNow('2026-04-15T12:31:00Z')
  expect((await goingNow(first)).lent).toEqual([])
})

test('of a car booked twice the first visit is laid, and the car is not to be had from the next one on', async () => {
  const next = await wash(0, '2026-04-20')
  const first = await wash(0, '2026-04-16')
  const task = await taskNow()
  expect(task.floor.jobs.map(job => job.id)).toEqual([first.id])
  const floor = await floorNow()
  expect(task.floor.lent).toEqual([{ thing: shop.vehicles[0], from: next.dropOffAt, to: floor.toAt }])
})

test('a car comes only when what it borrows is back, though its bay would be free before', async () => {
  const first = await wash(0, '2026-04-16')
  const second = await wash(1, '2026-04-16')
  for (const job of [first, second]) await borrow(job)
  const { floor } = await taskNow()
  // Both wanted home at once: with a bay for each, only what is lent keeps them apart.
  const bay = { ...floor.bays[0]!, closed: [] }
  const bays = [...floor.bays, { ...bay, id: 'one more' }, { ...bay, id: 'and another' }]
  const person = { ...floor.crew[0]!, away: [] }
  const wide = {
    ...floor,
    bays: bays.map(each => ({ ...each, can: [...new Set(bays.flatMap(({ can }) => can))] })),
    crew: [person, { ...person, id: 'a twin' }],
    jobs: floor.jobs.map(job => ({ ...job, release: first.dropOffAt, due: first.dropOffAt })),
  }
  const times = (asked: typeof wide) => {
    const laying = layFloor(asked)
    for (;;) {
      const { value, done } = laying.next()
      if (done) return Object.values(value.plan!).map(({ steps }) => steps[0]!.start)
    }
  }
  expect(new Set(times({ ...wide, jobs: wide.jobs.map(job => ({ ...job, things: [] })) })).size).toBe(1)
  const [one, other] = times(wide).sort((a, b) => a - b)
  expect(other! - one!).toBeGreaterThanOrEqual(first.handoverAt - first.dropOffAt)
})
