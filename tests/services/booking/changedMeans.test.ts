/** What follows a booking that goes otherwise besides its place: what it draws, borrows and owes. */
import { expect, test } from 'vitest'
import { changeBooking } from '../../../main/services/booking/changeBooking.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { noShow } from '../../../main/services/booking/otherwise.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { lend } from '../../../main/services/job/lending.ts'
import { getMoneyRules, saveMoneyRules } from '../../../main/services/prices/moneyRules.ts'
import { saveLendable } from '../../../main/services/setUp/lendables.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { moneyShop } from '../money/sample.ts'
import { shelfShop } from '../shelf/shelfShop.ts'

async function changed(desk: Desk, id: string, wish: Omit<Parameters<typeof changeOffers>[1], 'id'>) {
  const view = await changeOffers(desk, { id, ...wish })
  if (!view.soonest.feasible) throw new Error('no place')
  const { version } = await getJob(desk, { id })
  await changeBooking(desk, { id, version, ...wish, plan: view.soonest.plan })
  return view
}

test('what it draws is that of the work it now is, at the times it now has', async () => {
  const desk = await makeDesk('2026-04-15T11:00:00Z')
  const shop = await shelfShop(desk)
  const drawsOf = (jobId: string) => desk.store.read.stepDraw.findMany({ where: { jobId } })
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const before = (await drawsOf(id)).map(draw => draw.productId)
  await changed(desk, id, { treatmentIds: [shop.treatments.twoLayers] })
  const after = await drawsOf(id)
  expect(after.length).toBeGreaterThan(0)
  expect(after.map(draw => draw.productId)).not.toEqual(before)
  const { version } = await getJob(desk, { id })
  const later = await changeOffers(desk, { id, notBefore: '2026-04-20' })
  if (!later.soonest.feasible) throw new Error('no place')
  await changeBooking(desk, { id, version, plan: later.soonest.plan })
  expect((await drawsOf(id)).map(draw => draw.productId).sort()).toEqual(
    after.map(draw => draw.productId).sort(),
  )
})

test('what two treatments share is charged once, however often the booking changes', async () => {
  const { desk, shop } = await moneyShop()
  const { id } = await bookJob(desk, shop, { treatments: ['correction', 'twoLayers'] })
  const shared = () => desk.store.read.jobCharge.findMany({ where: { jobId: id, kind: 'shared' } })
  expect(await shared()).toHaveLength(1)
  const first = await changed(desk, id, { sizeClass: 'large' })
  const second = await changed(desk, id, { condition: 'heavy' })
  expect(await shared()).toHaveLength(1)
  expect((await getJob(desk, { id })).priceMinor).toBe(second.priceMinor)
  expect(second.priceMinor).toBeGreaterThanOrEqual(first.priceMinor)
})

test('what it borrows goes along, once', async () => {
  const { desk, shop } = await moneyShop()
  await saveLendable(desk, { name: 'Blue loan car', kind: 'loan car' })
  const { id, version } = await bookJob(desk, shop, { treatments: ['wash'] })
  await lend(desk, { id, version, kind: 'loan car', on: true })
  await changed(desk, id, { notBefore: '2026-04-20' })
  expect((await getJob(desk, { id })).lent).toMatchObject([{ name: 'Blue loan car' }])
  expect(await desk.store.read.jobLoan.count({ where: { jobId: id } })).toBe(1)
})

test('a car that did not come draws nothing, and owes no fee that was not asked', async () => {
  const desk = await makeDesk('2026-04-15T11:00:00Z')
  const shop = await shelfShop(desk)
  await saveMoneyRules(desk, { ...(await getMoneyRules(desk)), noShowMinor: 5_000 })
  const { id, dropOffAt } = await bookJob(desk, shop, { treatments: ['twoLayers'] })
  const draws = () => desk.store.read.stepDraw.count({ where: { jobId: id } })
  expect(await draws()).toBeGreaterThan(0)
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((dropOffAt + 30) * 60_000).toString())
  const { version } = await getJob(desk, { id })
  await noShow(desk, { id, version, fee: false })
  expect(await draws()).toBe(0)
  expect(await getJob(desk, { id })).toMatchObject({ status: 'noShow', priceMinor: 0 })
})
