import { beforeEach, expect, it } from 'vitest'
import { carUpkeep } from '../../../main/services/upkeep/car.ts'
import { saveExposure } from '../../../main/services/upkeep/exposure.ts'
import { inspect, recordLayer, voidInspection } from '../../../main/services/upkeep/inspect.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let vehicleId: string
let topper: string
beforeEach(async () => {
  desk = await makeDesk()
  vehicleId = (await testShop(desk)).vehicles[0]!
  topper = (await desk.store.read.product.findFirstOrThrow({ where: { kind: 'topper' } })).id
})

const layer = (laidOn = '2026-01-10') => recordLayer(desk, { vehicleId, productId: topper, laidOn })

it('keeps a layer laid elsewhere with its kind and age', async () => {
  await layer()
  const { layers } = await carUpkeep(desk, { vehicleId })
  // 10 January to 15 April 2026.
  expect(layers).toMatchObject([
    { stage: 'topper', productName: 'Ovrel Veil', laidOn: '2026-01-10', ageDays: 95 },
  ])
})

it.each([
  ['a day to come', { laidOn: '2026-04-16' }, 'laidOn'],
  ['a product that is none', { productId: 'none' }, 'productId'],
  ['a car that is not on file', { vehicleId: 'none' }, 'vehicleId'],
])('refuses a layer with %s', async (_, change, field) => {
  await expect(
    recordLayer(desk, { vehicleId, productId: topper, laidOn: '2026-04-15', ...change }),
  ).rejects.toMatchObject({ field })
})

it('notes a look with how the car lived then, today where no day is said, and takes it back', async () => {
  const { id: layerId } = await layer()
  await saveExposure(desk, { vehicleId, choices: { kept: 'outside' }, version: 0 })
  const { id } = await inspect(desk, {
    layerId,
    panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
    note: ' beads well ',
  })
  const row = await desk.store.read.inspection.findUniqueOrThrow({ where: { id } })
  expect(row).toMatchObject({ onDay: '2026-04-15', working: true, note: 'beads well', who: 'front desk' })
  expect(row.exposure).toBeLessThan(1)
  expect((await carUpkeep(desk, { vehicleId })).life).toMatchObject({ lives: 1, ended: 0 })
  await voidInspection(desk, { id })
  expect((await carUpkeep(desk, { vehicleId })).life).toMatchObject({ lives: 0 })
  await expect(voidInspection(desk, { id })).rejects.toMatchObject({ code: 'missing' })
})

it('shows inspections whose ages come to the same days as one, with their number', async () => {
  const { id: here } = await layer('2026-01-04')
  const other = (await desk.store.read.vehicle.findFirstOrThrow({ where: { id: { not: vehicleId } } })).id
  await saveExposure(desk, { vehicleId: other, choices: { distance: 'high' }, version: 0 })
  const { id: there } = await recordLayer(desk, { vehicleId: other, productId: topper, laidOn: '2026-01-14' })
  for (const layerId of [here, there])
    await inspect(desk, { layerId, panels: [{ panel: 'roof', before: 'weak', after: 'strong' }] })
  // 101 days, and 91 that wear like 101.1 at the 0.9 of a car driven much.
  expect((await carUpkeep(desk, { vehicleId })).life?.readings).toEqual([{ from: 101, to: null, count: 2 }])
})

it('refuses a look to come, before the layer was laid, or at no layer', async () => {
  const { id: layerId } = await layer()
  for (const on of ['2026-04-16', '2026-01-09'])
    await expect(
      inspect(desk, { layerId, panels: [{ panel: 'roof', before: 'weak', after: 'strong' }], on }),
    ).rejects.toMatchObject({ field: 'on' })
  await expect(
    inspect(desk, { layerId: 'none', panels: [{ panel: 'roof', before: 'weak', after: 'strong' }] }),
  ).rejects.toMatchObject({ field: 'layerId' })
  await inspect(desk, {
    layerId,
    panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
    on: '2026-01-10',
  })
})

it('counts a look that was taken back as never made', async () => {
  const { id: layerId } = await layer()
  const { id } = await inspect(desk, {
    layerId,
    panels: [{ panel: 'roof', before: 'none', after: 'none' }],
    on: '2026-03-01',
  })
  await expect(
    inspect(desk, {
      layerId,
      panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
      on: '2026-04-01',
    }),
  ).rejects.toMatchObject({
    code: 'working-after-gone',
  })
  await voidInspection(desk, { id })
  await inspect(desk, {
    layerId,
    panels: [{ panel: 'roof', before: 'weak', after: 'strong' }],
    on: '2026-04-01',
  })
})

it('learns no life from a single look, which may be clogged, and does from the look after the wash', async () => {
  const { id: layerId } = await layer()
  const single = [{ panel: 'roof' as const, before: 'none' as const, after: null }]
  await inspect(desk, { layerId, panels: single })
  const before = await carUpkeep(desk, { vehicleId })
  expect(before).toMatchObject({ singleLooks: 1, life: { lives: 0, ended: 0 } })
  expect(before.timeline.map(line => line.words).join()).toContain(
    'roof clogged or gone: wash and look again',
  )
  // Restored by the wash on the same day: a "gone" that was none stands in nobody's way.
  await inspect(desk, { layerId, panels: [{ ...single[0]!, after: 'strong' }] })
  expect((await carUpkeep(desk, { vehicleId })).life).toMatchObject({ lives: 1, ended: 0 })
})

it('keeps an inspection of an earlier version as the single look it was', async () => {
  const { id: layerId } = await layer()
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.inspection.create({
      data: { layerId, onDay: '2026-03-01', working: false, exposure: 1, at: desk.now(), who: 'test' },
    }),
  )
  const car = await carUpkeep(desk, { vehicleId })
  expect(car).toMatchObject({ singleLooks: 1, life: { lives: 0 } })
  expect(car.timeline.map(line => line.words)).toContain(
    'Ovrel Veil gone at a single look, clogged or not is not known',
  )
})
