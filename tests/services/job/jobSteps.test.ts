import { beforeEach, expect, it } from 'vitest'
import { arrive, finishStep, reopenStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'
import { saidOf } from './saidOf.ts'

let desk: TestDesk
let id: string
/** A car with two layers booked from 08:00: wash 0, wipe 1, layer 2, hold 3, layer 4, hold 5. The clock stands at 12:00. */
let eight: number
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  eight = desk.now()
  const shop = await testShop(desk)
  id = (await bookJob(desk, shop, { treatments: ['twoLayers'] })).id
  desk.setNow('2026-04-15T16:00:00Z')
})

const now = () => getJob(desk, { id })
const key = async () => ({ id, version: (await now()).version })
const step = async (position: number) => (await now()).steps[position]
const comes = async (at = eight) => arrive(desk, { ...(await key()), at })
const begins = async (position: number, at: number) => startStep(desk, { ...(await key()), position, at })
const ends = async (position: number, at: number) => finishStep(desk, { ...(await key()), position, at })
const back = async (position?: number) =>
  reopenStep(desk, { ...(await key()), ...(position !== undefined && { position }) })

it('records the minute a car came, between its booking and now, once', async () => {
  await expect(comes(eight - 1)).rejects.toMatchObject({ code: 'too-old', field: 'at' })
  await expect(comes(desk.now() + 1)).rejects.toMatchObject({ code: 'to-come', field: 'at' })
  await expect(begins(0, eight)).rejects.toMatchObject({ code: 'not-here' })
  await comes(eight)
  expect(await now()).toMatchObject({ status: 'inShop', arrivedAt: eight })
  await expect(comes()).rejects.toMatchObject({ code: 'not-booked' })
})

it('takes the steps one after the other, each begun and finished once', async () => {
  await comes(eight + 5)
  await expect(begins(0, eight + 4)).rejects.toMatchObject({ code: 'too-old' })
  await expect(begins(1, eight + 5)).rejects.toMatchObject({ code: 'not-its-turn', field: 'position' })
  await expect(begins(9, eight + 5)).rejects.toMatchObject({ code: 'missing' })
  await expect(begins(3, eight + 5)).rejects.toMatchObject({ code: 'hold' })
  await expect(ends(0, eight + 5)).rejects.toMatchObject({ code: 'not-begun' })
  await begins(0, eight + 5)
  expect(await step(0)).toMatchObject({ actualStartAt: eight + 5, actualEndAt: null, state: 'running' })
  await expect(begins(0, eight + 6)).rejects.toMatchObject({ code: 'begun' })
  await expect(ends(0, eight + 4)).rejects.toMatchObject({ code: 'too-old' })
  await expect(ends(0, desk.now() + 1)).rejects.toMatchObject({ code: 'to-come' })
  await ends(0, eight + 50)
  expect(await step(0)).toMatchObject({ actualStartAt: eight + 5, actualEndAt: eight + 50 })
  await expect(ends(0, eight + 51)).rejects.toMatchObject({ code: 'done' })
  await expect(begins(1, eight + 49)).rejects.toMatchObject({ code: 'too-old' })
  await begins(1, eight + 50)
})

it('keeps the next layer waiting to the very minute the profile names', async () => {
  await comes()
  for (const position of [0, 1, 2]) {
    await begins(position, eight + 10 * position)
    await ends(position, eight + 10 * position + 10)
  }
  // Begun at 20, an eighth of the layer was done by 21; those panels come first again, 138 minutes later.
  await expect(begins(4, eight + 159)).rejects.toMatchObject({
    code: 'too-early',
    message: expect.stringContaining('by the cure profile'),
  })
  await begins(4, eight + 160)
})

it('takes back a finish, then a start, then the arrival, and nothing before it', async () => {
  await comes()
  await begins(0, eight)
  await ends(0, eight + 60)
  await expect(back(1)).rejects.toMatchObject({
    code: 'not-last',
    message: expect.stringContaining('"Wash"'),
  })
  await back(0)
  expect(await step(0)).toMatchObject({ actualStartAt: eight, actualEndAt: null })
  await back()
  expect(await step(0)).toMatchObject({ actualStartAt: null, actualEndAt: null })
  await expect(back(0)).rejects.toMatchObject({
    code: 'not-last',
    message: expect.stringContaining('No step'),
  })
  await back()
  expect(await now()).toMatchObject({ status: 'booked', arrivedAt: null })
  await expect(back()).rejects.toMatchObject({ code: 'not-here' })
  const said = await saidOf(desk, (await now()).id)
  expect(said.slice(0, 3).map(words => words.replace(/,? [A-Z][a-z]{2} .*/, ''))).toEqual([
    'taken back: arrival',
    'taken back: start of "Wash"',
    'taken back: finish of "Wash"',
  ])
})

it('keeps the conditions of a layer, and of nothing else', async () => {
  await comes()
  for (const position of [0, 1, 2]) {
    await begins(position, eight + 10 * position)
    await ends(position, eight + 10 * position + 10)
  }
  const checks = await desk.store.read.conditionCheck.findMany()
  expect(checks.map(({ position, at, who, productName }) => [position, at, who, productName])).toEqual([
    [2, eight + 20, desk.who, 'Ovrel Two'],
  ])
})
