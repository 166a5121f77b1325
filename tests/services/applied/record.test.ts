import { beforeEach, expect, test } from 'vitest'
import { correctRecord, getApplied, saveDraft, signRecord } from '../../../main/services/applied/record.ts'
import { addReading } from '../../../main/services/cure/readings.ts'
import { handOver } from '../../../main/services/job/jobActs.ts'
import { does, job, layeredCar, setWall, wall } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let id: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  id = await layeredCar(desk, shop)
  for (const position of [0, 1]) await does(desk, id, position)
  const { bayId, startAt } = (await job(desk, id)).steps[2]!
  await addReading(desk, { bayId, at: startAt - 5, airC: 20, panelC: 17, humidityPercent: 80 })
  await does(desk, id, 2, { reason: 'Lamp beside it' })
  await does(desk, id, 4, { reason: 'Lamp beside it' })
})

async function home() {
  setWall(desk, '16T09:00')
  const { version } = await job(desk, id)
  await handOver(desk, { id, version })
}

async function filled() {
  const view = await getApplied(desk, { jobId: id })
  const draft = { ...view.draft, layers: view.draft.layers.map(layer => ({ ...layer, lot: 'batch 7K-114' })) }
  return { view, draft }
}

test('Who, what, where, when and in which air stand there before anybody types', async () => {
  const { facts, draft, notYet } = await getApplied(desk, { jobId: id })
  expect(notYet).toContain('once the car is handed over')
  expect(facts.layers.map(layer => [layer.productName, layer.bayName])).toEqual([
    ['Ovrel Two', expect.any(String)],
    ['Ovrel Two', expect.any(String)],
  ])
  expect(facts.layers[0]!.conditions).toContain('Started anyway: Lamp beside it.')
  expect(facts.layers[1]!.window).toContain('within it')
  expect(facts.overrides).toHaveLength(2)
  expect(draft.layers[0]).toMatchObject({ who: expect.stringMatching(/Jo|Sal/), lot: '' })
  expect(draft.layers[0]!.zones.length).toBeGreaterThan(5)
  expect(draft.layers[0]!.zones.every(zone => zone.finish === 'gloss')).toBe(true)
})

test('It is signed once the car has left, with the cure age it left with', async () => {
  const { draft } = await filled()
  const input = { jobId: id, version: 0, draft, signedBy: 'Jo' }
  await expect(signRecord(desk, input)).rejects.toMatchObject({ code: 'not-yet' })
  await home()
  const { view } = await filled()
  await expect(signRecord(desk, { ...input, draft: view.draft })).rejects.toMatchObject({
    code: 'incomplete',
    field: 'draft.layers.0.lot',
  })
  await signRecord(desk, input)
  const { entries } = await getApplied(desk, { jobId: id })
  expect(entries).toHaveLength(1)
  const [first, second] = entries[0]!.content.facts.layers
  // Left at 09:00 the next day; the second layer was finished at 13:30. The bay was 20 °C when it was last read, and
  // 17 °C on the panel: colder than the reference, so fewer minutes of cure than of time.
  const elapsed = wall('16T09:00') - second!.endAt
  expect(second!.ageMin).toBeGreaterThan(0)
  expect(second!.ageMin).toBeLessThan(elapsed)
  expect(first!.ageMin).toBeGreaterThan(second!.ageMin!)
})

test('A signed record is not changed any more, by the desk or by anybody at the database', async () => {
  await home()
  const { draft } = await filled()
  await saveDraft(desk, { jobId: id, version: 0, draft })
  await expect(saveDraft(desk, { jobId: id, version: 0, draft })).rejects.toMatchObject({ code: 'stale' })
  await signRecord(desk, { jobId: id, version: 1, draft, signedBy: 'Jo' })
  await expect(saveDraft(desk, { jobId: id, version: 2, draft })).rejects.toMatchObject({ code: 'signed' })
  await expect(signRecord(desk, { jobId: id, version: 2, draft, signedBy: 'Jo' })).rejects.toMatchObject({
    code: 'signed',
  })
  const stamp = { who: 'test', at: desk.now() }
  for (const meddle of [
    () => desk.store.transact(stamp, tx => tx.appliedEntry.updateMany({ data: { signedBy: 'Sal' } })),
    () => desk.store.transact(stamp, tx => tx.appliedEntry.deleteMany()),
    () => desk.store.transact(stamp, tx => tx.appliedRecord.updateMany({ data: { draft: {} } })),
    () => desk.store.transact(stamp, tx => tx.appliedRecord.deleteMany()),
  ])
    await expect(meddle()).rejects.toThrow()
  expect((await getApplied(desk, { jobId: id })).entries[0]!.signedBy).toBe('Jo')
})

test('A correction is a new page that points back, with its reason; what was signed stays', async () => {
  await home()
  const { draft } = await filled()
  await signRecord(desk, { jobId: id, version: 0, draft, signedBy: 'Jo' })
  const signed = (await getApplied(desk, { jobId: id })).entries[0]!
  const better = { ...draft, layers: draft.layers.map(layer => ({ ...layer, lot: 'batch 7K-115' })) }
  const input = { jobId: id, correctsId: signed.id, draft: better, signedBy: 'Sal' }
  await expect(correctRecord(desk, { ...input, reason: ' ' })).rejects.toMatchObject({ field: 'reason' })
  await correctRecord(desk, { ...input, reason: 'Read the wrong bottle' })
  const { entries } = await getApplied(desk, { jobId: id })
  expect(entries.map(({ number, corrects, signedBy }) => [number, corrects, signedBy])).toEqual([
    [1, null, 'Jo'],
    [2, 1, 'Sal'],
  ])
  expect(entries[0]).toEqual(signed)
  expect(entries[1]!.content.draft.layers[0]!.lot).toBe('batch 7K-115')
})

test('What is signed stays as it was when the shop’s own rows change later', async () => {
  await home()
  const { draft } = await filled()
  await signRecord(desk, { jobId: id, version: 0, draft, signedBy: 'Jo' })
  const before = (await getApplied(desk, { jobId: id })).entries
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    await tx.product.updateMany({ data: { name: 'Renamed' } })
    await tx.reading.updateMany({ data: { airC: 2 } })
  })
  expect((await getApplied(desk, { jobId: id })).entries).toEqual(before)
})
