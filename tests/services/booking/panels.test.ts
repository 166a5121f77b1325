import { beforeEach, expect, test } from 'vitest'
import { getApplied } from '../../../main/services/applied/record.ts'
import { bookPlace, confirmPlace, holdPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { arrive } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { getCustomer } from '../../../main/services/records/customers.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { listProducts, saveProduct } from '../../../main/services/setUp/products.ts'
import { does } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const vehicle = async () => {
  const row = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: shop.vehicles[0]! } })
  return (await getCustomer(desk, { id: row.customerId })).vehicles[0]!
}

/** Notes panels of the first car. */
async function note(panels: Parameters<typeof saveVehicle>[1]['panels']) {
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: shop.vehicles[0]! } })
  await saveVehicle(desk, { ...(await vehicle()), customerId, ...(panels && { panels }) })
}

const wish = (treatment: keyof TestShop['treatments'], scope?: 'front' | 'top') => ({
  treatmentIds: [shop.treatments[treatment]],
  condition: 'good' as const,
  ...(scope && { scope }),
})
const asked = (what: ReturnType<typeof wish>) =>
  offers(desk, { ...what, sizeClass: 'medium', vehicleId: shop.vehicles[0]! })

test('a front end takes its part of the time and the price, and is booked as that', async () => {
  const whole = await asked(wish('correction'))
  const front = await asked(wish('correction', 'front'))
  // 35 hundredths of 240 minutes, up to the grid; the wash is done to the whole car, and is whole in the price:
  // (60 + 0.35 × 240) of 300 minutes.
  expect(whole.steps.map(step => step.minutes)).toEqual([60, 240])
  expect(front.steps.map(step => step.minutes)).toEqual([60, 90])
  expect([whole.priceMinor, front.priceMinor]).toEqual([48_000, 23_040])
  expect(front.notes).toContainEqual(expect.stringContaining('front end, 35 %'))
  if (!front.soonest.feasible) throw new Error('no offer')
  const { plan } = front.soonest
  // The place of a front end is none for the whole car.
  await expect(
    holdPlace(desk, { ...wish('correction'), vehicleId: shop.vehicles[0]!, plan }),
  ).rejects.toMatchObject({ code: 'stale' })
  const held = await holdPlace(desk, { ...wish('correction', 'front'), vehicleId: shop.vehicles[0]!, plan })
  await confirmPlace(desk, held)
  const job = await getJob(desk, { id: held.jobId })
  expect(job.treatments).toEqual([
    { name: 'Single correction', priceMinor: 23_040, scope: 'front', leftOut: '' },
  ])
})

test('a panel the work may not touch is left out, said, and kept with the job', async () => {
  await note([{ panel: 'Roof', finish: 'matte film', since: null }])
  const view = await asked(wish('correction'))
  expect(view.notes).toContainEqual(expect.stringContaining('It leaves out Roof (matte film).'))
  expect(view.priceMinor).toBe(43_392)
  if (!view.soonest.feasible) throw new Error('no offer')
  const { plan } = view.soonest
  const held = await holdPlace(desk, { ...wish('correction'), vehicleId: shop.vehicles[0]!, plan })
  expect((await getJob(desk, { id: held.jobId })).treatments[0]).toMatchObject({
    leftOut: 'Roof (matte film)',
  })
})

test('a product’s own permission counts, and a treatment left without a panel is refused', async () => {
  await note([{ panel: 'Bonnet', finish: 'film', since: null }])
  const two = (await listProducts(desk)).find(each => each.name === 'Ovrel Two')!
  await saveProduct(desk, { ...two, finishes: ['film'] })
  expect((await asked(wish('twoLayers'))).priceMinor).toBe(40_991)
  await note([])
  await expect(asked(wish('twoLayers'))).rejects.toMatchObject({ code: 'no-panel', field: 'treatmentIds' })
  await saveProduct(desk, { ...two, version: two.version + 1, finishes: null })
  expect((await asked(wish('twoLayers'))).priceMinor).toBe(129_900)
})

test('what is noted of panels is kept with the car, and taken out again', async () => {
  await note([{ panel: 'Roof', finish: 'respray', since: '2026-04-01' }])
  expect((await vehicle()).panels).toEqual([{ panel: 'Roof', finish: 'respray', since: '2026-04-01' }])
  await expect(note([{ panel: 'Roof', finish: 'respray', since: null }])).rejects.toMatchObject({
    field: 'panels.0.since',
  })
  await note([])
  expect((await vehicle()).panels).toEqual([])
})

test('the applied record proposes the panels a layer was sold for, without those left out', async () => {
  await note([{ panel: 'Bonnet', finish: 'plastic', since: null }])
  const view = await asked(wish('twoLayers', 'front'))
  if (!view.soonest.feasible) throw new Error('no offer')
  const { plan } = view.soonest
  const { jobId } = await bookPlace(desk, {
    ...wish('twoLayers', 'front'),
    vehicleId: shop.vehicles[0]!,
    plan,
  })
  await arrive(desk, { id: jobId, version: 2 })
  for (const position of [0, 1, 2]) await does(desk, jobId, position)
  const { draft } = await getApplied(desk, { jobId })
  expect(draft.layers[0]?.zones.map(zone => zone.name)).toEqual(['Front bumper', 'Left wing', 'Right wing'])
})
