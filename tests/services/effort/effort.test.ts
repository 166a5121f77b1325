import { beforeEach, expect, test } from 'vitest'
import { offers } from '../../../main/services/booking/offers.ts'
import { getEffort, saveEffort } from '../../../main/services/effort/effort.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { bookJob } from '../bookJob.ts'
import { does, job } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

/** A correction of 240 minutes that took `longer` than that, begun as planned. */
async function corrected(vehicle: number, longer: number): Promise<string> {
  const { id, version } = await bookJob(desk, shop, { treatments: ['correction'], vehicle, kind: 'soonest' })
  await arrive(desk, { id, version })
  await does(desk, id, 0)
  const step = (await job(desk, id)).steps[1]!
  const end = Temporal.Instant.fromEpochMilliseconds((step.startAt + 240 + longer) * 60_000)
  const wall = end.toZonedDateTimeISO('America/New_York').toString().slice(8, 16)
  await does(desk, id, 1, { to: wall })
  const now = await job(desk, id)
  await handOver(desk, { id, version: now.version })
  return id
}

const wish = () => ({
  treatmentIds: [shop.treatments.correction, shop.treatments.topped],
  sizeClass: 'medium' as const,
  finish: 'gloss' as const,
  condition: 'good' as const,
})
const minutes = async () =>
  (await offers(desk, wish())).steps
    .filter(step => step.kind === 'work')
    .map(({ name, minutes }) => [name, minutes] as const)

test('A shop books as it is written until it says otherwise, and then by what it has learned', async () => {
  const written = await minutes()
  await corrected(0, 60)
  expect(await minutes()).toEqual(written)
  expect(await saveEffort(desk, { promisePercent: 80, version: 0 })).toEqual({ version: 1 })
  await expect(saveEffort(desk, { promisePercent: 90, version: 0 })).rejects.toMatchObject({ code: 'stale' })
  const { notes } = await offers(desk, wish())
  expect(notes.join(' ')).toMatch(
    /Hands-on times \d+ % longer than written: 80 of 100 such visits take no longer \(1 finished visit\)\./,
  )
  const learned = new Map(await minutes())
  for (const [name, before] of written) {
    const after = learned.get(name)!
    // Laying has the windows of its product.
    if (name === 'Layer' || name === 'Topper') expect(after).toBe(before)
    else expect(after).toBeGreaterThan(before)
  }
  await saveEffort(desk, { promisePercent: null, version: 1 })
  expect(await minutes()).toEqual(written)
})

test('What was stretched when it was booked is learned from as it was written', async () => {
  await saveEffort(desk, { promisePercent: 80, version: 0 })
  const id = await corrected(0, 0)
  const { stretch, steps } = await desk.store.read.job.findUniqueOrThrow({
    where: { id },
    include: { steps: true },
  })
  expect(stretch).toBeGreaterThan(1.2)
  expect(steps.reduce((sum, step) => sum + step.minutes, 0)).toBeGreaterThan(360)
  const { recent } = await getEffort(desk)
  // 60 and 240 as written, but for the grid of a quarter hour.
  expect(Math.abs(recent[0]!.plannedMin - 300)).toBeLessThan(30)
})

test('How promises held is counted by when the car was ready, and who did it by name', async () => {
  expect(await getEffort(desk)).toMatchObject({
    visits: 0,
    promises: { of: 0, low: 0, high: 1 },
    recent: [],
    people: [],
  })
  const id = await corrected(0, 0)
  const { number } = await desk.store.read.job.findFirstOrThrow()
  const [who] = (await job(desk, id)).steps[1]!.crew
  expect(await getEffort(desk)).toMatchObject({
    visits: 1,
    promises: { of: 1, kept: 1 },
    recent: [{ jobNumber: number, plannedMin: 300, realMin: 300, lateMin: 0 }],
    people: [{ id: who!.id, name: who!.name, count: 1, median: expect.closeTo(1, 1) }],
  })
  desk.setNow('2026-04-20T12:00:00Z')
  await corrected(1, 90)
  const { promises, recent, usual } = await getEffort(desk)
  // Between 0 and 90 minutes in proportion: definition 7 of Hyndman and Fan 1996.
  expect(promises).toMatchObject({ of: 2, kept: 1, lateMin: 81 })
  expect(recent[0]).toMatchObject({ realMin: 390, lateMin: 90 })
  expect(usual.safe).toBeGreaterThan(usual.median)
})
