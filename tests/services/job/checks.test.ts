import { beforeEach, expect, test } from 'vitest'
import { tickCheck } from '../../../main/services/job/checks.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
  const wash = (await listTreatments(desk)).find(each => each.id === shop.treatments.wash)!
  await saveTreatment(desk, {
    ...wash,
    checks: [
      { moment: 'handover', words: 'Bolts torqued again' },
      { moment: 'arrival', words: 'Wash mode set' },
    ],
  })
})

const setNow = (at: number) => desk.setNow(Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString())

/** A washed car, ready to go home. */
async function washedJob() {
  const { id, version, dropOffAt, steps } = await bookJob(desk, shop, { treatments: ['wash'] })
  setNow(dropOffAt)
  let seen = await arrive(desk, { id, version })
  for (const { position, startAt, endAt } of steps) {
    setNow(startAt)
    seen = await startStep(desk, { id, ...seen, position })
    setNow(endAt)
    seen = await finishStep(desk, { id, ...seen, position })
  }
  return { id, ...seen }
}

test('a booking brings its treatments’ checks, which are ticked off by name and time, and back', async () => {
  const seen = await washedJob()
  const { checks } = await getJob(desk, seen)
  expect(checks.map(({ words, doneBy }) => [words, doneBy])).toEqual([
    ['Wash mode set', null],
    ['Bolts torqued again', null],
  ])
  const checkId = checks[1]!.id
  const ticked = await tickCheck(desk, { ...seen, checkId, by: ' Mika ' })
  expect((await getJob(desk, seen)).checks[1]).toMatchObject({ doneBy: 'Mika', doneAt: desk.now() })
  await expect(tickCheck(desk, { id: seen.id, ...ticked, checkId, by: 'Mika' })).rejects.toMatchObject({
    code: 'as-before',
  })
  await expect(tickCheck(desk, { ...seen, checkId, by: 'Sal' })).rejects.toMatchObject({ code: 'stale' })
  await tickCheck(desk, { id: seen.id, ...ticked, checkId, by: null })
  expect((await getJob(desk, seen)).checks[1]).toMatchObject({ doneBy: null, doneAt: null })
})

test('a car goes home with checks open only for a reason, which is kept with what was open', async () => {
  const seen = await washedJob()
  await expect(handOver(desk, seen)).rejects.toMatchObject({
    code: 'reason-needed',
    message: expect.stringContaining('"Bolts torqued again" not ticked off'),
  })
  let { version } = seen
  for (const { id: checkId } of (await getJob(desk, seen)).checks)
    ({ version } = await tickCheck(desk, { id: seen.id, version, checkId, by: 'Sal' }))
  await handOver(desk, { id: seen.id, version })
  expect((await getJob(desk, seen)).status).toBe('handedOver')
})

test('a check of another job is not ticked off here', async () => {
  const seen = await washedJob()
  const other = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1 })
  await expect(tickCheck(desk, { ...seen, checkId: other.checks[0]!.id, by: 'Sal' })).rejects.toMatchObject({
    field: 'checkId',
  })
})

test('a coat is begun with checks open only for a reason', async () => {
  const coated = (await listTreatments(desk)).find(each => each.id === shop.treatments.twoLayers)!
  await saveTreatment(desk, { ...coated, checks: [{ moment: 'coat', words: 'Cameras masked' }] })
  const { id, version, dropOffAt, steps } = await bookJob(desk, shop, { treatments: ['twoLayers'] })
  setNow(dropOffAt)
  let seen = await arrive(desk, { id, version })
  for (const { position, startAt, endAt, kind, stage } of steps) {
    if (kind === 'hold') continue
    setNow(startAt)
    if (stage === 'coat') {
      await expect(startStep(desk, { id, ...seen, position })).rejects.toMatchObject({
        message: expect.stringContaining('Not ticked off: Cameras masked.'),
      })
      return
    }
    seen = await startStep(desk, { id, ...seen, position })
    setNow(endAt)
    seen = await finishStep(desk, { id, ...seen, position })
  }
  throw new Error('no coat was reached')
})
