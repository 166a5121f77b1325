import { beforeEach, expect, test } from 'vitest'
import { changeBooking } from '../../../main/services/booking/changeBooking.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { bookJob } from '../bookJob.ts'
import { saidOf } from '../job/saidOf.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { rowsOf } from '../undo/rowsOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })

test('Another day: the old place is kept until the new one is taken, and is free in the same act', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  const view = await changeOffers(desk, { id: job.id, askedDate: '2026-04-17' })
  expect(view.before).toMatchObject({ dropOffAt: job.dropOffAt, promisedAt: job.promisedAt })
  expect(view.priceMinor).toBe(job.priceMinor)
  // Its own place is not in its own way: today is still the soonest.
  expect(view.soonest).toMatchObject({ feasible: true, dropOffAt: job.dropOffAt })
  if (!view.askedDay.feasible) throw new Error('no place')
  expect((await getJob(desk, { id: job.id })).dropOffAt).toBe(job.dropOffAt)
  await changeBooking(desk, { ...(await key(job.id)), plan: view.askedDay.plan })
  const after = await getJob(desk, { id: job.id })
  expect(after).toMatchObject({
    dropOffAt: view.askedDay.dropOffAt,
    promisedAt: view.askedDay.handoverAt,
    priceMinor: job.priceMinor,
  })
  const next = await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  expect(next.dropOffAt).toBe(job.dropOffAt)
  expect((await saidOf(desk, job.id))[0]).toContain('changed: comes Fri 17 April')
})

test('Other work: price, steps, draws and promise follow in one act, and back again', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  const before = rowsOf(desk.store.source.file)
  const wish = {
    treatmentIds: [shop.treatments.wash, shop.treatments.twoLayers],
    sizeClass: 'large' as const,
  }
  const view = await changeOffers(desk, { id: job.id, ...wish })
  if (!view.soonest.feasible) throw new Error('no place')
  expect(view.priceMinor).toBeGreaterThan(job.priceMinor)
  await changeBooking(desk, { ...(await key(job.id)), ...wish, plan: view.soonest.plan })
  const after = await getJob(desk, { id: job.id })
  expect(after.treatments.map(each => each.name)).toHaveLength(2)
  expect(after).toMatchObject({
    priceMinor: view.priceMinor,
    promisedAt: view.soonest.handoverAt,
    coated: true,
  })
  expect(after.vehicle.sizeClass).toBe('large')
  expect((await saidOf(desk, job.id))[0]).toMatch(/Hand wash and Two layers instead of Hand wash$/)
  await takeBack(desk, {})
  expect(rowsOf(desk.store.source.file)).toEqual(before)
})

test('What has begun is not sold otherwise', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  await arrive(desk, await key(job.id))
  await startStep(desk, { ...(await key(job.id)), position: 0 })
  await expect(changeOffers(desk, { id: job.id, condition: 'heavy' })).rejects.toMatchObject({
    code: 'begun',
  })
})

test('A form of before is refused, and a place taken meanwhile too', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  const view = await changeOffers(desk, { id: job.id, askedDate: '2026-04-17' })
  if (!view.askedDay.feasible) throw new Error('no place')
  const stale = { id: job.id, version: 99, plan: view.askedDay.plan }
  await expect(changeBooking(desk, stale)).rejects.toMatchObject({ code: 'stale' })
  const [step] = view.askedDay.plan.steps
  const twisted = { ...view.askedDay.plan, steps: [{ ...step!, bay: shop.bays['Bay 4']! }] }
  await expect(changeBooking(desk, { ...(await key(job.id)), plan: twisted })).rejects.toMatchObject({
    code: 'stale',
  })
})

test('A booking that was called off is taken up again on another day', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  await cancelJob(desk, { ...(await key(job.id)), reason: 'ill' })
  const view = await changeOffers(desk, { id: job.id, notBefore: '2026-04-20' })
  if (!view.soonest.feasible) throw new Error('no place')
  await changeBooking(desk, { ...(await key(job.id)), plan: view.soonest.plan })
  expect(await getJob(desk, { id: job.id })).toMatchObject({
    status: 'booked',
    dropOffAt: view.soonest.dropOffAt,
  })
})
