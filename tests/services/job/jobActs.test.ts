import { beforeEach, expect, test } from 'vitest'
import { handOver, promiseAgain } from '../../../main/services/job/jobActs.ts'
import { jobCure } from '../../../main/services/job/jobCure.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import type { JobView } from '../../../main/services/job/jobView.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { type BookWish, bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

const at = (wall: string) =>
  desk.setNow(
    Temporal.PlainDateTime.from(`2026-04-${wall}`).toZonedDateTime('America/New_York').toInstant().toString(),
  )
const key = async (id: string) => ({ id, version: (await getJob(desk, { id })).version })

async function hereAfter(wish: BookWish): Promise<JobView> {
  const job = await bookJob(desk, shop, { kind: 'askedDay', ...wish })
  await arrive(desk, await key(job.id))
  return job
}

async function does(id: string, position: number, from: string, to?: string) {
  at(from)
  await startStep(desk, { ...(await key(id)), position })
  if (to === undefined) return
  at(to)
  await finishStep(desk, { ...(await key(id)), position })
}

test('Half an hour before the profile’s figure is early: it needs a reason', async () => {
  const { id } = await hereAfter({ treatments: ['topped'] })
  const { steps } = await getJob(desk, { id })
  const work = steps.filter(step => step.kind === 'work')
  for (const { position, startAt, endAt } of work) {
    desk.setNow(iso(startAt))
    await startStep(desk, { ...(await key(id)), position })
    desk.setNow(iso(endAt))
    await finishStep(desk, { ...(await key(id)), position })
  }
  const { safeAt } = await getJob(desk, { id })
  desk.setNow(iso(safeAt - 30))
  await expect(handOver(desk, await key(id))).rejects.toMatchObject({ code: 'reason-needed' })
  desk.setNow(iso(safeAt))
  await handOver(desk, await key(id))
})

const iso = (at: number) => Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString()

test('A car that is only polished: no word of a cure, neither when it leaves early nor when it runs late', async () => {
  const { id } = await hereAfter({ treatments: ['correction'] })
  await does(id, 0, '15T08:00', '15T11:00')
  const late = await getJob(desk, { id })
  expect(late).toMatchObject({ coated: false, cureWords: [] })
  const { slip } = await jobCure(desk, { id })
  expect(slip?.message?.text).toContain('The work is taking longer than planned.')
  expect(slip?.message?.text).not.toMatch(/cur|coat/i)

  const leaving = handOver(desk, await key(id))
  await expect(leaving).rejects.toThrow(
    'Not yet: "One-step correction" not finished. Handing over now needs a reason, which is kept.',
  )
  await handOver(desk, { ...(await key(id)), reason: 'needs it back' })
  expect((await saidOf(desk, id))[0]).toBe(
    'handed over Wed 15 April 11:00, One-step correction not finished, because: needs it back',
  )
})

test('Nothing leaves before what was recorded last', async () => {
  const { id } = await hereAfter({ treatments: ['wash'] })
  await does(id, 0, '15T08:00', '15T09:00')
  await expect(handOver(desk, { ...(await key(id)), at: desk.now() - 1 })).rejects.toMatchObject({
    code: 'too-old',
  })
})

test('A start in a bay where another car stands, with its person at work, asks, and goes on when accepted', async () => {
  const first = await hereAfter({ treatments: ['wash'] })
  await does(first.id, 0, '15T08:00')
  const second = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1, kind: 'askedDay' })
  at('15T08:50')
  await arrive(desk, await key(second.id))
  const start = async () => ({ ...(await key(second.id)), position: 0 })
  const asked = startStep(desk, await start())
  await expect(asked).rejects.toMatchObject({ code: 'taken', field: 'position' })
  const who = first.steps[0]!.crew[0]!.name
  if (second.steps[0]!.crew[0]!.name === who)
    await expect(asked).rejects.toThrow(`${who} is still on "Wash" of KFR 204 (job 1).`)
  await expect(asked).rejects.toThrow('Bay 1 is taken by KFR 204 (job 1).')
  await startStep(desk, { ...(await start()), accepted: true })
  expect((await getJob(desk, { id: second.id })).steps[0]).toMatchObject({ state: 'running' })
})

test('A car booked for two months ahead that comes today goes through its steps today', async () => {
  const { id, steps } = await hereAfter({ treatments: ['twoLayers'], askedDate: '2026-06-15' })
  expect(steps[0]!.startAt - desk.now()).toBeGreaterThan(60 * 1440)
  await does(id, 0, '15T08:00', '15T09:00')
  await does(id, 1, '15T09:00', '15T09:30')
  await does(id, 2, '15T09:30', '15T11:00')
  const laid = await getJob(desk, { id })
  // The hold after the coat runs from its real end.
  expect(laid.steps[3]!.startAt).toBe(desk.now())
})

test('A promise further off than the floor is known is refused as that, not as a closed door', async () => {
  const { id } = await hereAfter({ treatments: ['wash'] })
  const promising = promiseAgain(desk, { ...(await key(id)), promisedAt: desk.now() + 60 * 1440 })
  await expect(promising).rejects.toMatchObject({ code: 'promise-far', field: 'promisedAt' })
})
