import { beforeEach, expect, test } from 'vitest'
import { gridUp, startOfDay } from '../../../main/domain/calendar/index.ts'
import { problemOf } from '../../../main/domain/floor/index.ts'
import { promiseOf } from '../../../main/domain/schedule/index.ts'
import { releasePlace } from '../../../main/services/booking/booking.ts'
import { loadFloor } from '../../../main/services/floor/loadFloor.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { sell } from '../../../main/services/setUp/soldTreatments.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { addWaiting, removeWaiting } from '../../../main/services/waiting/entries.ts'
import type { WaitInput } from '../../../main/services/waiting/inputs.ts'
import {
  answerWaiting,
  askWaiting,
  waitingList,
  waitingWords,
} from '../../../main/services/waiting/waitingList.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York; one bay for everything, so that one car fills it.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk, 'America/New_York', [['Bay 1', ['wet', 'polish', 'clean', 'cure']]])
})

const wish = (vehicle: number, more: Partial<WaitInput> = {}): WaitInput => ({
  vehicleId: shop.vehicles[vehicle]!,
  treatmentIds: [shop.treatments.correction],
  condition: 'good',
  scope: 'whole',
  fromOn: '2026-04-15',
  toOn: '2026-04-15',
  weekdays: [],
  note: '',
  ...more,
})

/** Cars until today is full. */
async function fillToday(): Promise<string[]> {
  const ids: string[] = []
  for (let vehicle = 0; vehicle < 2; vehicle++) {
    const job = await bookJob(desk, shop, { treatments: ['correction'], vehicle })
    ids.push(job.id)
  }
  return ids
}

test('A place comes free: who fits is said with how well it is used, and held for whoever is asked first', async () => {
  const [first] = await fillToday()
  // Who came first uses less of it.
  const { id: other } = await addWaiting(desk, wish(3, { treatmentIds: [shop.treatments.wash] }))
  const { id } = await addWaiting(desk, wish(2))
  const toOn = '2026-04-14'
  await expect(addWaiting(desk, wish(2, { toOn }))).rejects.toMatchObject({ code: 'days-bad' })
  await expect(addWaiting(desk, wish(2, { fromOn: '2026-04-13', toOn }))).rejects.toMatchObject({
    code: 'days-bad',
  })
  const job = await getJob(desk, { id: first! })
  await cancelJob(desk, { id: job.id, version: job.version, reason: 'ill' })
  const { entries } = await waitingList(desk, { freedJobId: first })
  const best = entries.find(entry => entry.id === id)!
  expect(entries[0]?.id).toBe(id)
  expect(best.fits).toMatchObject({ dropOffAt: job.dropOffAt, gapMin: job.handoverAt - job.dropOffAt })
  expect(best.fits?.usedMin).toBe(best.fits?.gapMin)
  expect(await waitingWords(desk, { id })).toContain('Whoever answers first has it')
  expect(await askWaiting(desk, best)).toEqual({ held: true })
  const held = (await waitingList(desk, {})).entries.find(entry => entry.id === id)!
  expect(held.held).toMatchObject({ dropOffAt: job.dropOffAt })
  await removeWaiting(desk, held)
  expect((await waitingList(desk, {})).entries.map(entry => entry.id)).toEqual([other])
  expect(await getJob(desk, { id: held.held!.jobId })).toMatchObject({ status: 'cancelled' })
})

test('The first answer wins: the other, for whom it was held, is told', async () => {
  await desk.store.read.shop.findFirst()
  const [first, second] = await fillToday()
  for (const id of [first!, second!]) {
    const { version } = await getJob(desk, { id })
    await cancelJob(desk, { id, version, reason: 'ill' })
  }
  const long = { treatmentIds: [shop.treatments.correction, shop.treatments.twoLayers], toOn: '2026-04-16' }
  const { id: slow } = await addWaiting(desk, wish(2, long))
  const { id: quick } = await addWaiting(desk, wish(3, long))
  const entry = async (id: string) => (await waitingList(desk, {})).entries.find(each => each.id === id)!
  expect(await askWaiting(desk, await entry(slow))).toEqual({ held: true })
  expect(await askWaiting(desk, await entry(quick))).toEqual({ held: false })
  const { jobId, lost } = await answerWaiting(desk, { ...(await entry(quick)), answer: 'yes' })
  expect(await getJob(desk, { id: jobId! })).toMatchObject({ status: 'booked' })
  expect(lost).toHaveLength(1)
  expect(lost[0]?.words).toContain('has gone to somebody who answered first')
  expect(await entry(slow)).toMatchObject({ held: null, fits: null })
  await expect(answerWaiting(desk, { ...(await entry(slow)), answer: 'yes' })).rejects.toMatchObject({
    code: 'no-place',
  })
  await takeBack(desk, {})
  expect(await entry(slow)).toMatchObject({ held: { dropOffAt: expect.any(Number) } })
})

test('Who was told of a place that another had held is told as well when a third one takes it', async () => {
  const [first] = await fillToday()
  const { version } = await getJob(desk, { id: first! })
  await cancelJob(desk, { id: first!, version, reason: 'ill' })
  const ids: string[] = []
  for (const vehicle of [0, 2, 3]) ids.push((await addWaiting(desk, wish(vehicle))).id)
  const entry = async (id: string) => (await waitingList(desk, {})).entries.find(each => each.id === id)!
  for (const id of ids) await askWaiting(desk, await entry(id))
  // Asked of tomorrow, in nobody's way.
  const { id: later } = await addWaiting(
    desk,
    wish(1, { treatmentIds: [shop.treatments.wash], fromOn: '2026-04-16', toOn: '2026-04-16' }),
  )
  await askWaiting(desk, await entry(later))
  const { lost } = await answerWaiting(desk, { ...(await entry(ids[2]!)), answer: 'yes' })
  expect(lost.map(each => each.customerName).sort()).toEqual(['Ines Vale', 'Rowan Ashdown'])
  for (const id of ids.slice(0, 2)) expect(await entry(id)).toMatchObject({ held: null, fits: null })
  expect((await entry(ids[1]!)).askedAt).toBeNull()
  expect((await entry(later)).held).not.toBeNull()
})

test('No: what was held is let go, and they stay on the list', async () => {
  const { id } = await addWaiting(desk, wish(2))
  const entry = async () => (await waitingList(desk, {})).entries.find(each => each.id === id)!
  await askWaiting(desk, await entry())
  const { held } = await entry()
  await answerWaiting(desk, { ...(await entry()), answer: 'no' })
  expect((await entry()).held).toBeNull()
  expect((await getJob(desk, { id: held!.jobId })).status).toBe('cancelled')
  await expect(releasePlace(desk, { jobId: held!.jobId, version: 1 })).rejects.toThrow()
})

test('Each answer is the promise engine’s own, asked alone', async () => {
  const [first] = await fillToday()
  const { version } = await getJob(desk, { id: first! })
  await cancelJob(desk, { id: first!, version, reason: 'ill' })
  const wishes = [
    wish(2),
    wish(3, { treatmentIds: [shop.treatments.twoLayers], toOn: '2026-04-18' }),
    wish(2, { treatmentIds: [shop.treatments.wash, shop.treatments.topped], toOn: '2026-04-20' }),
    wish(3, { fromOn: '2026-04-16', toOn: '2026-04-24', weekdays: [5] }),
    wish(2, { condition: 'heavy', toOn: '2026-04-17', weekdays: [3, 4] }),
  ]
  const ids: string[] = []
  for (const each of wishes) ids.push((await addWaiting(desk, each)).id)
  const { entries } = await waitingList(desk, {})
  const zone = 'America/New_York'
  const nowAt = desk.now()
  const floor = await loadFloor(desk.store.read, nowAt, nowAt + 60 * 1440)
  for (const [i, each] of wishes.entries()) {
    const { steps } = await sell(desk.store.read, {
      ...each,
      sizeClass: 'medium',
      finish: 'gloss',
      over: { panels: [], scope: 'whole', nowAt },
    })
    const horizon = startOfDay(Temporal.PlainDate.from(each.toOn).add({ days: 1 }).toString(), zone)
    const days: string[] = []
    for (
      let day = Temporal.PlainDate.from(each.fromOn);
      day.toString() <= each.toOn;
      day = day.add({ days: 1 })
    )
      if (each.weekdays.length === 0 || each.weekdays.includes(day.dayOfWeek)) days.push(day.toString())
    const homes = days.flatMap(day => {
      const from = Math.max(gridUp(floor, nowAt), startOfDay(day, zone))
      const to = startOfDay(Temporal.PlainDate.from(day).add({ days: 1 }).toString(), zone) - 1
      const [head, ...rest] = steps
      const alone = problemOf(floor, {
        job: {
          id: 'x',
          release: from,
          asked: from,
          steps: [{ ...head!, startFrom: from, startTo: to }, ...rest],
        },
      })
      const offer = promiseOf({ ...alone, horizon }, 'soonest')
      return offer.feasible ? [offer.handover] : []
    })
    const best = homes.length === 0 ? null : Math.min(...homes)
    expect(entries.find(entry => entry.id === ids[i])?.fits?.handoverAt ?? null, String(i)).toBe(best)
  }
})

test('A car that is here for another job then does not fit, and a part of a car takes its part of the time', async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await bookJob(desk, shop, { treatments: ['correction'], vehicle: 0 })
  const { id: here } = await addWaiting(desk, wish(0, { treatmentIds: [shop.treatments.wash] }))
  const { id: elsewhere } = await addWaiting(desk, wish(1, { treatmentIds: [shop.treatments.wash] }))
  const days = { fromOn: '2026-04-16', toOn: '2026-04-17' }
  const { id: whole } = await addWaiting(desk, wish(2, days))
  const { id: front } = await addWaiting(desk, wish(3, { ...days, scope: 'front' }))
  const { entries } = await waitingList(desk, {})
  const fitOf = (id: string) => entries.find(entry => entry.id === id)!.fits
  expect(fitOf(here)).toBeNull()
  expect(fitOf(elsewhere)).not.toBeNull()
  expect(fitOf(front)!.handoverAt).toBeLessThan(fitOf(whole)!.handoverAt)
})
