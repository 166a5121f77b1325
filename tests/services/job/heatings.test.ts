import { afterAll, beforeAll, expect, it } from 'vitest'
import { addHeating, voidHeating } from '../../../main/services/job/heatings.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { bookJob } from '../bookJob.ts'
import { does, job, layeredCar } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let jobId: string
/** The minute the first coat was finished; the clock stands three hours later. */
let end: number

beforeAll(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    for (const { id, cureProfile } of await tx.product.findMany({ where: { name: 'Ovrel Two' } }))
      await tx.product.update({
        where: { id },
        data: {
          cureProfile: {
            ...Object(cureProfile),
            forcedCure: [{ panelC: 60, minutes: 30, readyMin: 600, source: 'data sheet' }],
          },
        },
      })
  })
  jobId = await layeredCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, jobId, position)
  end = (await job(desk, jobId)).steps[2]?.actualEndAt ?? 0
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((end + 180) * 60_000).toString())
})
afterAll(() => desk.close())

const heat = async (change: Partial<Parameters<typeof addHeating>[1]> = {}) =>
  addHeating(desk, {
    jobId,
    version: (await job(desk, jobId)).version,
    fromAt: end + 10,
    toAt: end + 40,
    panelC: 60,
    note: ' lamp ',
    ...change,
  })
const kept = () => desk.store.read.forcedCure.findMany({ orderBy: { at: 'asc' } })

it.each([
  ['too-early', 'fromAt', () => ({ fromAt: end - 1 })],
  ['heating-backwards', 'toAt', () => ({ toAt: end + 10 })],
  ['to-come', 'toAt', () => ({ toAt: end + 181 })],
  ['panel-impossible', 'panelC', () => ({ panelC: 19.9 })],
  ['panel-impossible', 'panelC', () => ({ panelC: 150.1 })],
] as const)('is refused as %s by its %s', async (code, field, change) => {
  await expect(heat(change())).rejects.toMatchObject({ code, field })
  expect(await kept()).toEqual([])
})

it.each([
  // By NIST Special Publication 811, appendix B.8: t/°C = (t/°F - 32) / 1.8.
  [28 / 1.8, '60 °F is no panel under a lamp; look again.'],
  [278 / 1.8, '310 °F is no panel under a lamp; look again.'],
])('names the temperature in the shop’s unit: %f °C', async (panelC, message) => {
  await expect(heat({ panelC })).rejects.toMatchObject({ message })
})

it('is refused for a car with nothing laid', async () => {
  const other = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 1 })
  const heating = { jobId: other.id, fromAt: end, toAt: end + 30, panelC: 60, note: '' }
  await expect(addHeating(desk, { ...heating, version: other.version })).rejects.toMatchObject({
    code: 'nothing-laid',
  })
  const { version } = await arrive(desk, { id: other.id, version: other.version })
  await expect(addHeating(desk, { ...heating, version })).rejects.toMatchObject({ code: 'nothing-laid' })
})

it.each<[string, { panelC?: number; toAt?: number }, boolean]>([
  ['as hot and as long as a row of the data sheet asks', {}, true],
  ['half a degree too cold', { panelC: 59.5 }, false],
  ['a minute too short', { toAt: -1 }, false],
  ['a minute longer', { toAt: 1 }, true],
])('counts where it was %s', async (_, { toAt = 0, ...change }, counted) => {
  const saved = await heat({ ...change, toAt: end + 40 + toAt })
  expect(saved.counted).toBe(counted)
  const row = (await kept()).at(-1)
  expect(row).toMatchObject({ jobId, note: 'lamp', who: desk.who, at: desk.now(), voidedAt: null })
  const line = await desk.store.read.auditLine.findFirst({
    where: { act: 'heated' },
    orderBy: { id: 'desc' },
  })
  expect(line).toMatchObject({ entityId: jobId, detail: { counted, fromAt: end + 10 } })
  const { version } = await voidHeating(desk, { jobId, version: saved.version, id: row?.id ?? '' })
  expect((await kept()).at(-1)?.voidedAt).toBe(desk.now())
  await expect(voidHeating(desk, { jobId, version, id: row?.id ?? '' })).rejects.toMatchObject({
    code: 'missing',
    field: 'id',
  })
})

it('is taken back of its own job only', async () => {
  const { version } = await heat()
  const id = (await kept()).at(-1)?.id ?? ''
  const other = await bookJob(desk, shop, { treatments: ['wash'], vehicle: 2 })
  await expect(voidHeating(desk, { jobId: other.id, version: other.version, id })).rejects.toMatchObject({
    code: 'missing',
  })
  await voidHeating(desk, { jobId, version, id })
})
