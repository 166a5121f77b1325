/** Whatever frees a place, how well it would be used is said: moved, other work, gone early, as much as called off. */
import { beforeEach, expect, test } from 'vitest'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { changeBooking } from '../../../main/services/booking/changeBooking.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { cancelJob, handOver } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { noteJob } from '../../../main/services/job/note.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { addWaiting } from '../../../main/services/waiting/entries.ts'
import { freedMinutes } from '../../../main/services/waiting/freed.ts'
import { waitingList } from '../../../main/services/waiting/waitingList.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York; one bay for everything.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk, 'America/New_York', [['Bay 1', ['wet', 'polish', 'clean', 'cure']]])
})

const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })
const freed = (id: string) => freedMinutes(desk, { freedJobId: id })

async function changeTo(id: string, wish: Omit<Parameters<typeof changeOffers>[1], 'id'>) {
  const { soonest } = await changeOffers(desk, { id, ...wish })
  if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
  const { notBefore: _, askedDate: __, ...work } = wish
  await changeBooking(desk, { ...(await key(id)), ...work, plan: soonest.plan })
}

/** How much of the place that a job had the one who waits for today would use. */
async function used(freedJobId: string) {
  const { entries } = await waitingList(desk, { freedJobId })
  const { usedMin = 0, gapMin = 0 } = entries[0]?.fits ?? {}
  return { usedMin, gapMin }
}

async function oneWaits() {
  await addWaiting(desk, {
    vehicleId: shop.vehicles[2]!,
    treatmentIds: [shop.treatments.correction],
    condition: 'good',
    scope: 'whole',
    fromOn: '2026-04-15',
    toOn: '2026-04-15',
    weekdays: [],
    note: '',
  })
}

test('Moved to another day: the place it had is free, and who fits uses it whole', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['correction'] })
  await oneWaits()
  expect(await freed(id)).toBe(0)
  await changeTo(id, { notBefore: '2026-04-16' })
  // An hour of washing and four of polishing.
  expect(await used(id)).toEqual({ usedMin: 300, gapMin: 300 })
  // A note changes nothing of it; taken back, it has its place again, and the other day is free.
  await noteJob(desk, { id, words: 'asks for a call' })
  expect(await freed(id)).toBe(300)
  await takeBack(desk, {})
  await takeBack(desk, {})
  expect(await used(id)).toEqual({ usedMin: 0, gapMin: 300 })
})

test('Moved on the board by an hour, an hour is free', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  await moveStay(desk, {
    jobId: job.id,
    version: job.version,
    position: 0,
    bayId: shop.bays['Bay 1']!,
    startAt: job.steps[0]!.startAt + 60,
  })
  expect(await freed(job.id)).toBe(60)
})

test('Other work that takes less leaves the rest', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['correction'] })
  await changeTo(id, { treatmentIds: [shop.treatments.wash] })
  expect(await freed(id)).toBe(240)
})

test('Gone sooner than planned: free from now on', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['correction'] })
  await arrive(desk, await key(id))
  for (const position of [0, 1]) {
    await startStep(desk, { ...(await key(id)), position })
    desk.setNow(`2026-04-15T1${3 + position}:00:00Z`)
    await finishStep(desk, { ...(await key(id)), position })
  }
  await handOver(desk, { ...(await key(id)), reason: 'so it is' })
  // Ten o'clock; it was to go at one.
  expect(await freed(id)).toBe(180)
  await oneWaits()
  expect(await used(id)).toEqual({ usedMin: 180, gapMin: 180 })
})

test('Called off, all of it; and nothing of what is over by now', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['correction'] })
  await cancelJob(desk, { ...(await key(id)), reason: 'ill' })
  expect(await freed(id)).toBe(300)
  desk.setNow('2026-04-15T16:00:00Z')
  expect(await freed(id)).toBe(60)
  expect(await freedMinutes(desk, { freedJobId: 'gone' })).toBe(0)
})
