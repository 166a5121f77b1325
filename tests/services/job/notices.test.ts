import { beforeEach, expect, test } from 'vitest'
import { setBayUsual } from '../../../main/services/cure/readings.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { takeNotices } from '../../../main/services/job/notices.ts'
import { does, job, setWall, toppedCar } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let id: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  const coating = await desk.store.read.product.findFirstOrThrow({ where: { name: 'Ovrel Two' } })
  const veil = await desk.store.read.product.findFirstOrThrow({ where: { name: 'Ovrel Veil' } })
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.product.update({
      where: { id: coating.id },
      data: {
        cureProfile: {
          ...(coating.cureProfile as object),
          // A coat of 90 minutes and a topper of 45: from 60 to 120 minutes after the coat every panel keeps it.
          topper: { minMin: 99, advisedMin: 99, maxMin: 210, productIds: [veil.id] },
        },
      },
    }),
  )
  id = await toppedCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, id, position)
})

const kinds = async () => (await takeNotices(desk)).map(notice => notice.kind)
/** So many minutes after the coat was finished. */
async function after(minutes: number) {
  const end = (await job(desk, id)).steps[2]!.actualEndAt!
  desk.setNow(Temporal.Instant.fromEpochMilliseconds((end + minutes) * 60_000).toString())
}

test('A topper window is told when it opens, 20 minutes before it closes, and the release: each once', async () => {
  await after(59)
  expect(await kinds()).toEqual([])
  await after(60)
  const [opens] = await takeNotices(desk)
  expect(opens).toMatchObject({ kind: 'topper opens', jobId: id })
  expect(opens!.words).toContain('The data sheet decides.')
  expect(`${opens!.title} ${opens!.words}`).not.toMatch(/\bsafe\b/i)
  expect(await kinds()).toEqual([])
  await after(100)
  expect(await kinds()).toEqual(['topper closes soon'])
  await after(125)
  expect(await kinds()).toEqual([])
  const topper = await does(desk, id, 4)
  expect(await kinds()).toEqual([])
  const release = Temporal.Instant.fromEpochMilliseconds(topper.safeAt * 60_000).toString()
  desk.setNow(release)
  expect(await kinds()).toEqual(['release'])
  expect(await kinds()).toEqual([])
})

test('A computer asleep through a window says so on waking, once, and that it is late', async () => {
  await after(300)
  const notices = await takeNotices(desk)
  expect(notices.map(notice => notice.kind)).toEqual(['topper opens', 'topper closed'])
  for (const { words } of notices) expect(words).toContain('Told late')
  expect(await kinds()).toEqual([])
})

test('Two windows that ask at the same moment are told between them once', async () => {
  await after(60)
  const both = await Promise.all([takeNotices(desk), takeNotices(desk)])
  expect(both.flat()).toHaveLength(1)
})

test('In the cold a window opens later, and is told then', async () => {
  const { bayId } = (await job(desk, id)).steps[2]!
  await setBayUsual(desk, { bayId, version: 0, celsius: 17 })
  // At 2^-0.3 of the pace the last panel is ripe after 121.9 minutes, and its turn comes 39.4 into the topper of 45.
  await after(82)
  expect(await kinds()).toEqual([])
  await after(83)
  expect(await kinds()).toEqual(['topper opens'])
})

test('A window that the cold closes before it opens is told as closed, and never as open', async () => {
  const { bayId } = (await job(desk, id)).steps[2]!
  await setBayUsual(desk, { bayId, version: 0, celsius: 10 })
  // The first panel, done 90 minutes before the coat was, is over 210 minutes after that.
  await after(119)
  expect(await kinds()).toEqual([])
  await after(120)
  expect(await kinds()).toEqual(['topper closed'])
  await after(200)
  expect(await kinds()).toEqual([])
})

test('A topper begun in its window closes nothing, and a car that has left is told of no more', async () => {
  await after(60)
  expect(await kinds()).toEqual(['topper opens'])
  const { version, safeAt } = await does(desk, id, 4)
  await handOver(desk, { id, version, reason: 'the owner insists' })
  setWall(desk, '17T12:00')
  expect(safeAt).toBeLessThan(desk.now())
  expect(await kinds()).toEqual([])
})
