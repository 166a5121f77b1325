import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, expect, test } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { addReading, setBayUsual, voidReading } from '../../../main/services/cure/readings.ts'
import { addHeating, voidHeating } from '../../../main/services/job/heatings.ts'
import { promiseAgain } from '../../../main/services/job/jobActs.ts'
import { jobCure } from '../../../main/services/job/jobCure.ts'
import { openStore } from '../../../main/store/store.ts'
import { does, job, layeredCar, setWall, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:00 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
})

/** The bay reads this from one wall time to another, every half hour. */
async function reads(bayId: string, airC: number, from: string, to: string) {
  for (let at = wall(from); at <= wall(to); at += 30)
    await addReading(desk, { bayId, at, airC, panelC: null, humidityPercent: null })
}

/** Both layers on at their planned times: the second done at 13:30. Returns the bay of the last hold. */
async function bothLayers(id: string): Promise<string> {
  for (const position of [0, 1, 2, 4]) await does(desk, id, position)
  return (await job(desk, id)).steps[5]!.bayId
}

test('Without a reading, and with readings at the reference, the clock is the profile’s own', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  const before = await job(desk, id)
  expect(before.safeAt).toBe(before.steps[4]!.actualEndAt! + 240)
  expect(before.steps[5]!.cure!.clock).toMatchObject({ usualFrom: 'profile', usualC: 20, ageMin: 0 })
  await reads(bay, 20, '15T10:00', '15T13:30')
  setWall(desk, '15T15:30')
  await reads(bay, 20, '15T14:00', '15T15:30')
  const after = await job(desk, id)
  expect(after.safeAt).toBe(before.safeAt)
  expect(after.steps[5]!.cure!.clock!.ageMin).toBeCloseTo(120, 9)
})

test('Ten degrees colder takes twice as long, and says what was measured, assumed and projected', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  const end = (await job(desk, id)).steps[4]!.actualEndAt!
  setWall(desk, '15T15:30')
  await reads(bay, 10, '15T13:30', '15T15:00')
  const cold = await job(desk, id)
  const { cure } = cold.steps[5]!
  // Doubling per 10 °C is the rule of the common-practice profile: 10 °C against the reference 20 °C is half as fast.
  expect(cure!.safeAt).toBe(end + 480)
  expect(cold.safeAt).toBe(end + 480)
  expect(cure!.clock).toMatchObject({
    usualC: 10,
    usualFrom: 'last week',
    untilNow: { measuredMin: 90, assumedMin: 30, projectedMin: 0 },
    untilSafe: { measuredMin: 90, assumedMin: 30, projectedMin: 360 },
  })
  expect(cure!.clock!.ageMin).toBeCloseTo(60, 9)
  // The hold on the board is as long as the clock makes it, and its car goes home next morning.
  const { stays } = await boardRange(desk, { fromDate: '2026-04-15', days: 1 })
  const hold = stays.flatMap(stay => stay.blocks).findLast(block => block.kind === 'hold')!
  expect(hold.toAt).toBe(end + 480)
  expect(cold.handoverAt).toBe(wall('16T08:00'))
})

test('Warmth shortens nothing', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  const { safeAt } = await job(desk, id)
  setWall(desk, '15T15:00')
  await reads(bay, 35, '15T13:30', '15T15:00')
  expect((await job(desk, id)).safeAt).toBe(safeAt)
})

test('A cold first layer keeps the second waiting: it may not be begun before its clock says so', async () => {
  const id = await layeredCar(desk, shop)
  for (const position of [0, 1, 2]) await does(desk, id, position)
  const first = await job(desk, id)
  const end = first.steps[2]!.actualEndAt!
  await setBayUsual(desk, { bayId: first.steps[2]!.bayId, version: 0, celsius: 10 })
  const cold = await job(desk, id)
  // At half the pace the last panel is ripe after 276 minutes, and its turn comes 78 into the second layer of 90.
  expect(cold.steps[3]!.endAt).toBe(end + 198)
  // Cold keeps no window open: 330 less the 90 to the last panel.
  expect(cold.steps[3]!.cure).toMatchObject({ recoatOpensAt: end + 198, recoatClosesAt: end + 240 })
  const opens = Temporal.Instant.fromEpochMilliseconds((end + 60) * 60_000).toString()
  desk.setNow(opens)
  await expect(does(desk, id, 4, { from: '15T12:00' })).rejects.toThrow('by the cure profile')
})

test('A milestone that moves past the promise is told at once, with a new time and words for the owner', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  expect((await jobCure(desk, { id })).slip).toBeNull()
  setWall(desk, '15T15:30')
  await reads(bay, 10, '15T13:30', '15T15:30')
  const late = await job(desk, id)
  const { slip } = await jobCure(desk, { id })
  expect(late.lateMin).toBe(slip!.lateMin)
  expect(slip).toMatchObject({ nextAt: wall('16T08:00') })
  expect(slip?.message?.text).toContain('Dear Ines Vale')
  expect(slip?.message?.text).toContain('colder')
  expect(slip?.message?.text).toContain('Thu 16 April 08:00')
  expect(slip?.message?.text).not.toMatch(/\bsafe\b/i)
  await promiseAgain(desk, { id, version: late.version, promisedAt: slip!.nextAt })
  expect((await jobCure(desk, { id })).slip).toBeNull()
})

test('A restart in the middle of a hold shows the same clock', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  setWall(desk, '15T15:30')
  await reads(bay, 13, '15T13:30', '15T15:30')
  const before = (await job(desk, id)).steps[5]!.cure
  const [{ file }] = await desk.store.read.$queryRaw<
    [{ file: string }]
  >`select file from pragma_database_list`
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-again-'))
  // What another process finds on the disk at this moment, the log beside the file included.
  for (const tail of ['', '-wal']) copyFileSync(file + tail, join(dir, `again.db${tail}`))
  const store = await openStore(join(dir, 'again.db'), { dir: migrationsDir })
  const after = (await job({ ...desk, store }, id)).steps[5]!.cure
  await store.close()
  rmSync(dir, { recursive: true, force: true })
  expect(after).toEqual(before)
})

test('A reading found to be wrong is taken out of the clock and kept', async () => {
  const id = await layeredCar(desk, shop)
  const bay = await bothLayers(id)
  const { safeAt } = await job(desk, id)
  setWall(desk, '15T14:30')
  await reads(bay, 2, '15T14:00', '15T14:00')
  expect((await job(desk, id)).safeAt).toBeGreaterThan(safeAt)
  const reading = await desk.store.read.reading.findFirstOrThrow()
  await voidReading(desk, { id: reading.id })
  expect((await job(desk, id)).safeAt).toBe(safeAt)
  expect(await desk.store.read.reading.count()).toBe(1)
})

test('A heated cure counts by a row of the data sheet only, and can be taken back', async () => {
  const { product } = desk.store.read
  const coating = await product.findFirstOrThrow({ where: { name: 'Ovrel Two' } })
  const profile = coating.cureProfile as object
  const id = await layeredCar(desk, shop)
  await bothLayers(id)
  const { safeAt, version } = await job(desk, id)
  setWall(desk, '15T14:45')
  const heat = { jobId: id, fromAt: wall('15T13:40'), toAt: wall('15T14:40'), panelC: 60, note: 'two lamps' }
  const cold = await addHeating(desk, { ...heat, version })
  expect(cold.counted).toBe(false)
  expect((await job(desk, id)).safeAt).toBe(safeAt)
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.product.update({
      where: { id: coating.id },
      data: { cureProfile: { ...profile, forcedCure: [{ panelC: 60, minutes: 60, standsForMin: 180 }] } },
    }),
  )
  // Sixty minutes that stand for 180: the handover comes 120 minutes sooner.
  expect((await job(desk, id)).safeAt).toBe(safeAt - 120)
  const [heating] = (await jobCure(desk, { id })).heatings
  await voidHeating(desk, { jobId: id, version: cold.version, id: heating!.id })
  expect((await job(desk, id)).safeAt).toBe(safeAt)
  const again = (await job(desk, id)).version
  await expect(addHeating(desk, { ...heat, version: again, toAt: wall('15T18:00') })).rejects.toThrow(
    'still to come',
  )
})
