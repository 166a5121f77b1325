import { beforeEach, expect, test } from 'vitest'
import { moveStay } from '../../../main/services/board/boardMove.ts'
import { bookPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { answerSpot, recordSpot, takeSpotBack } from '../../../main/services/job/testSpot.ts'
import { getBill, saveBill } from '../../../main/services/money/bill.ts'
import { saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { bookJob } from '../bookJob.ts'
import { does, job, setWall, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let shop: TestShop
let id: string

// Wednesday 15 April 2026, 08:00 in New York: a wash, a test spot of 45 minutes, and a correction of four hours.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  const by = (takes: number) => ({ small: takes, medium: takes, large: takes, xl: takes })
  const base = { needs: 'wet', skill: 'wash', crew: 1, splittable: false, sameBay: false } as const
  const rest = { waitMin: null, waitMax: null, byCondition: false, productId: null }
  const spot = await saveTreatment(desk, {
    name: 'Test spot',
    summary: '',
    prices: by(6_000),
    steps: [
      { ...base, ...rest, name: 'Wash', stage: 'prepare', minutes: by(60) },
      {
        ...base,
        ...rest,
        name: 'Test spot',
        stage: 'test',
        needs: 'polish',
        skill: 'polish',
        minutes: by(45),
      },
    ],
  })
  Object.assign(shop.treatments, { spot: spot.id })
  const booked = await bookJob(desk, shop, { treatments: ['spot' as 'wash', 'correction'] })
  id = booked.id
  await arrive(desk, { id, version: booked.version })
})

const figures = {
  combination: 'Fine polish, soft pad, two passes',
  lostUm: 2.5,
  glossBefore: 82,
  glossAfter: 91,
}

async function recorded(perPanelMin: number) {
  await does(desk, id, 0)
  const { version } = await does(desk, id, 1)
  await recordSpot(desk, { id, version, perPanelMin, ...figures })
  return job(desk, id)
}
const answer = { by: 'Ines Vale', how: 'phone' } as const

test('A booking begins with a test spot: after the wash, before the correction, once', async () => {
  const booked = await job(desk, id)
  expect(booked.steps.map(step => step.name)).toEqual(['Wash', 'Test spot', 'One-step correction'])
  expect(booked.testSpot).toMatchObject({ canRecord: false, result: null, change: null })
  await expect(
    recordSpot(desk, { id, version: booked.version, perPanelMin: 30, ...figures }),
  ).rejects.toMatchObject({ code: 'spot-not-begun' })
})

test('What it showed is laid against what was booked, and nothing changes before the customer answers', async () => {
  const before = await job(desk, id)
  const shown = await recorded(60)
  // 60 min a panel are 660 instead of 240; done at 09:45, 495 min fit in before 18:00 and 165 are left for the morning.
  expect(shown.testSpot).toMatchObject({
    canAnswer: true,
    result: { perPanelMin: 60, lostUm: 2.5, who: 'front desk' },
    change: {
      minutes: { before: 240, after: 660 },
      handoverAt: { before: wall('15T13:45'), after: wall('16T10:45') },
      // 480.00, of which 240 of 300 minutes are correction: 480 × (1 + 0.8 × 1.75); the spot's own 60.00 stay,
      // and the wash of both, 34.29 of them, is charged once.
      priceMinor: { before: 50_571, after: 117_771 },
    },
  })
  expect([shown.promisedAt, shown.priceMinor]).toEqual([before.promisedAt, before.priceMinor])
})

test('Sold for a front end, the panel counts for its part of the paint, in time and price', async () => {
  const wish = {
    treatmentIds: [(shop.treatments as Record<string, string>).spot!, shop.treatments.correction],
    condition: 'good' as const,
    scope: 'front' as const,
  }
  const { soonest } = await offers(desk, { ...wish, sizeClass: 'medium' })
  if (!soonest.feasible) throw new Error(soonest.reasons.join(' '))
  const { jobId } = await bookPlace(desk, { ...wish, vehicleId: shop.vehicles[1]!, plan: soonest.plan })
  id = jobId
  const { version } = await job(desk, id)
  desk.setNow(Temporal.Instant.fromEpochMilliseconds(soonest.dropOffAt * 60_000).toString())
  await arrive(desk, { id, version })
  // The other car has the bay and the people still; what really happens is asked about, not refused.
  for (const position of [0, 1]) {
    await startStep(desk, { id, version: (await job(desk, id)).version, position, accepted: true })
    await finishStep(desk, { id, version: (await job(desk, id)).version, position })
  }
  await recordSpot(desk, { id, version: (await job(desk, id)).version, perPanelMin: 60, ...figures })
  const { testSpot } = await job(desk, id)
  // 35 hundredths of the paint (common practice, no source): 240 min are 84, on the grid 90; 60 × 11 are 231, so 240.
  expect(testSpot?.change?.minutes).toEqual({ before: 90, after: 240 })
  // 480.00 × (60 + 84) of 300 min is 230.40; 84 of 144 min of it are correction, 240 instead of 90: 224.00 more.
  const { before = 0, after = 0 } = testSpot?.change?.priceMinor ?? {}
  expect(after - before).toBe(22_400)
})

test('Agreed: steps, places, price and promise follow in one act, and all of it is taken back by one', async () => {
  const shown = await recorded(60)
  const rows = () => desk.store.read.jobStep.findMany({ where: { jobId: id }, include: { crew: true } })
  const stepsBefore = await rows()
  await answerSpot(desk, { id, version: shown.version, answer: 'agreed', ...answer, priceMinor: 120_000 })
  const agreed = await job(desk, id)
  expect(agreed.steps[2]).toMatchObject({ minutes: 660, startAt: wall('15T09:45'), endAt: wall('16T10:45') })
  expect([agreed.promisedAt, agreed.handoverAt, agreed.lateMin]).toEqual([
    wall('16T10:45'),
    wall('16T10:45'),
    0,
  ])
  expect(agreed.priceMinor).toBe(120_000)
  expect(agreed.testSpot).toMatchObject({
    canAnswer: false,
    canRecord: false,
    answer: { said: 'agreed', by: 'Ines Vale', how: 'phone' },
    change: { minutes: { before: 240, after: 660 }, priceMinor: { before: 50_571, after: 120_000 } },
  })
  expect((await saidOf(desk, id))[0]).toContain(
    'test spot agreed by Ines Vale (phone): correction 11 h instead of 4 h',
  )
  await expect(
    answerSpot(desk, { id, version: agreed.version, answer: 'declined', ...answer, priceMinor: 0 }),
  ).rejects.toMatchObject({ code: 'answered' })
  await takeSpotBack(desk, { id, version: agreed.version })
  const again = await job(desk, id)
  expect([again.promisedAt, again.handoverAt, again.priceMinor]).toEqual([
    shown.promisedAt,
    shown.handoverAt,
    shown.priceMinor,
  ])
  expect(await rows()).toEqual(stepsBefore)
  await takeSpotBack(desk, { id, version: again.version })
  expect((await job(desk, id)).testSpot?.result).toBeNull()
})

test('The price agreed is the whole: extras are in it, and one below them alone is refused by its field', async () => {
  const shown = await recorded(60)
  const { version, prices, charges } = await getBill(desk, { id })
  await saveBill(desk, {
    id,
    version,
    prices: prices.map(({ id, priceMinor }) => ({ id, priceMinor })),
    charges: [
      ...charges,
      { kind: 'extra', treatmentId: null, words: 'Care kit', quantity: '1', amountMinor: 4_500, taxKey: '' },
    ],
    depositMinor: 0,
    taxExempt: '',
    taxReversed: false,
  })
  expect((await job(desk, id)).priceMinor).toBe(shown.priceMinor + 4_500)
  const agree = async (priceMinor: number) => {
    const { version } = await job(desk, id)
    return answerSpot(desk, { id, version, answer: 'agreed', ...answer, priceMinor })
  }
  await expect(agree(1_000)).rejects.toMatchObject({ code: 'price-low', field: 'priceMinor' })
  await agree(120_000)
  expect((await job(desk, id)).priceMinor).toBe(120_000)
})

test('Declined: it stays as it was booked, and it is kept who said so', async () => {
  const shown = await recorded(60)
  await answerSpot(desk, { id, version: shown.version, answer: 'declined', ...answer, priceMinor: 0 })
  const declined = await job(desk, id)
  expect([declined.steps[2]?.minutes, declined.promisedAt, declined.priceMinor]).toEqual([
    240,
    shown.promisedAt,
    shown.priceMinor,
  ])
  expect(declined.testSpot?.answer).toMatchObject({ said: 'declined', by: 'Ines Vale' })
})

test('A shorter correction frees its bay, and is not promised sooner', async () => {
  const shown = await recorded(10)
  await answerSpot(desk, { id, version: shown.version, answer: 'agreed', ...answer, priceMinor: 40_000 })
  const agreed = await job(desk, id)
  expect(agreed.steps[2]).toMatchObject({ minutes: 120, endAt: wall('15T11:45') })
  expect([agreed.promisedAt, agreed.handoverAt]).toEqual([shown.promisedAt, wall('15T11:45')])
})

test('Taken back where another car has its old place by then, it is refused in words, and the answer stands', async () => {
  const shown = await recorded(10)
  await answerSpot(desk, { id, version: shown.version, answer: 'agreed', ...answer, priceMinor: 40_000 })
  const agreed = await job(desk, id)
  const { bayId } = agreed.steps[2]!
  const other = await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  await moveStay(desk, {
    jobId: other.id,
    version: other.version,
    position: 1,
    bayId,
    startAt: wall('15T12:00'),
  })
  await expect(takeSpotBack(desk, { id, version: agreed.version })).rejects.toThrow(/taken/)
  expect((await job(desk, id)).testSpot?.answer).toMatchObject({ said: 'agreed' })
})

test('Begun without an answer it asks; begun, the figures stand as they are', async () => {
  const shown = await recorded(60)
  setWall(desk, '15T09:45')
  const start = { id, version: shown.version, position: 2 }
  await expect(startStep(desk, start)).rejects.toMatchObject({ code: 'taken' })
  await startStep(desk, { ...start, accepted: true })
  const { version } = await job(desk, id)
  for (const act of [
    recordSpot(desk, { id, version, perPanelMin: 30, ...figures }),
    answerSpot(desk, { id, version, answer: 'agreed', ...answer, priceMinor: 1 }),
    takeSpotBack(desk, { id, version }),
  ])
    await expect(act).rejects.toMatchObject({ code: 'correction-begun' })
})

test('Where another car is booked into the bay, the longer work is laid around it or the run into it is told', async () => {
  await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  const shown = await recorded(60)
  const { change } = shown.testSpot!
  await answerSpot(desk, { id, version: shown.version, answer: 'agreed', ...answer, priceMinor: 1 })
  const agreed = await job(desk, id)
  expect(agreed.handoverAt).toBe(change?.handoverAt.after)
  expect(agreed.conflicts).toEqual([])
})

test('Readings nobody can have taken, a spot of no time and an empty name are refused by their field', async () => {
  await does(desk, id, 0)
  const { version } = await does(desk, id, 1)
  const record = (change: object) => recordSpot(desk, { id, version, perPanelMin: 60, ...figures, ...change })
  await expect(record({ lostUm: 101 })).rejects.toMatchObject({ field: 'lostUm' })
  await expect(record({ glossAfter: -1 })).rejects.toMatchObject({ field: 'glossAfter' })
  await expect(record({ perPanelMin: 0 })).rejects.toMatchObject({ field: 'perPanelMin' })
  await expect(record({ combination: ' ' })).rejects.toMatchObject({ field: 'combination' })
  await record({})
  await expect(record({})).rejects.toMatchObject({ code: 'stale' })
  const input = { id, version: version + 1, answer: 'agreed', how: 'phone', priceMinor: 1 } as const
  await expect(answerSpot(desk, { ...input, by: ' ' })).rejects.toMatchObject({ field: 'by' })
  await expect(answerSpot(desk, { ...input, by: 'Ines', priceMinor: -1 })).rejects.toMatchObject({
    field: 'priceMinor',
  })
})
