import { beforeEach, expect, test } from 'vitest'
import { comesLater, fetchLater, noShow } from '../../../main/services/booking/otherwise.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { setStepMinutes } from '../../../main/services/job/stepMinutes.ts'
import { getBill } from '../../../main/services/money/bill.ts'
import { getMoneyRules, saveMoneyRules } from '../../../main/services/prices/moneyRules.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { rowsOf } from '../undo/rowsOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await saveMoneyRules(desk, { ...(await getMoneyRules(desk)), noShowMinor: 5_000, keptDayMinor: 1_500 })
})

const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })
const rows = () => rowsOf(desk.store.source.file)
const at = (wall: string) =>
  Temporal.PlainDateTime.from(`2026-04-${wall}`).toZonedDateTime('America/New_York').toInstant()
    .epochMilliseconds / 60_000

test('Nobody came: the place is free, the fee is all that is owed, and it is undone', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  desk.setNow('2026-04-15T13:00:00Z')
  const before = rows()
  await noShow(desk, { ...(await key(job.id)), fee: true })
  expect(await getJob(desk, { id: job.id })).toMatchObject({ status: 'noShow', priceMinor: 5_000, stays: [] })
  expect(await getBill(desk, { id: job.id })).toMatchObject({ withTaxMinor: 5_000, prices: [] })
  const next = await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  expect(next.steps[0]?.bayId).toBe(job.steps[0]?.bayId)
  await takeBack(desk, {})
  await takeBack(desk, {})
  await takeBack(desk, {})
  expect(rows()).toEqual(before)
})

test('Before its time nobody has failed to come', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'], askedDate: '2026-04-17', kind: 'askedDay' })
  await expect(noShow(desk, { ...(await key(job.id)), fee: false })).rejects.toMatchObject({
    code: 'not-due',
  })
})

test('It comes later: the rest is laid from then on, the promise stays as it was told', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  await comesLater(desk, { ...(await key(job.id)), at: at('15T13:00') })
  const after = await getJob(desk, { id: job.id })
  expect(after.dropOffAt).toBe(at('15T13:00'))
  expect(after.promisedAt).toBe(job.promisedAt)
  expect(after.lateMin).toBe(after.handoverAt - job.promisedAt)
  expect(after.lateMin).toBeGreaterThan(0)
  await expect(comesLater(desk, { ...(await key(job.id)), at: at('15T07:00') })).rejects.toMatchObject({
    code: 'over',
  })
})

test('Ready and fetched later: the bay is kept until then, and each day costs the shop’s fee', async () => {
  const job = await bookJob(desk, shop, { treatments: ['wash'] })
  await arrive(desk, await key(job.id))
  await expect(
    fetchLater(desk, { ...(await key(job.id)), at: at('17T10:00'), fee: true }),
  ).rejects.toMatchObject({ code: 'not-ready' })
  for (const { position } of job.steps) {
    await startStep(desk, { ...(await key(job.id)), position })
    desk.setNow('2026-04-15T14:00:00Z')
    await finishStep(desk, { ...(await key(job.id)), position })
  }
  const { priceMinor } = await getJob(desk, { id: job.id })
  await fetchLater(desk, { ...(await key(job.id)), at: at('17T10:00'), fee: true })
  const after = await getJob(desk, { id: job.id })
  expect(after.stays.at(-1)?.toAt).toBe(at('17T10:00'))
  expect(after.unfetchedAt).toBeNull()
  expect((await getBill(desk, { id: job.id })).withTaxMinor).toBe(priceMinor + 2 * 1_500)
  desk.setNow('2026-04-17T15:00:00Z')
  expect((await getJob(desk, { id: job.id })).unfetchedAt).toBe(at('17T10:00'))
})

test('A step takes longer: what follows moves with it, and a promise that cannot be kept is the new one', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  const { position, minutes } = job.steps[0]!
  const before = rows()
  await setStepMinutes(desk, { ...(await key(job.id)), position, minutes: minutes + 120, chargeMinor: 9_000 })
  const after = await getJob(desk, { id: job.id })
  expect(after.promisedAt).toBe(job.promisedAt + 120)
  expect(after.handoverAt).toBe(after.promisedAt)
  expect(after.priceMinor).toBe(job.priceMinor + 9_000)
  await takeBack(desk, {})
  expect(rows()).toEqual(before)
})

test('A running step that takes longer pushes its car, and is refused no sooner than its end', async () => {
  const job = await bookJob(desk, shop, { treatments: ['correction'] })
  const { position, minutes } = job.steps[0]!
  await arrive(desk, await key(job.id))
  await startStep(desk, { ...(await key(job.id)), position })
  await setStepMinutes(desk, { ...(await key(job.id)), position, minutes: minutes + 60, chargeMinor: 0 })
  expect((await getJob(desk, { id: job.id })).handoverAt).toBe(job.handoverAt + 60)
  await finishStep(desk, { ...(await key(job.id)), position })
  await expect(
    setStepMinutes(desk, { ...(await key(job.id)), position, minutes: 600, chargeMinor: 0 }),
  ).rejects.toMatchObject({ code: 'no-step' })
})
