import { beforeEach, expect, test } from 'vitest'
import { confirmPlace, holdPlace } from '../../../main/services/booking/booking.ts'
import type { OfferView } from '../../../main/services/booking/offers.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { archiveCustomer, restoreCustomer } from '../../../main/services/records/customers.ts'
import { archiveVehicle } from '../../../main/services/records/vehicles.ts'
import { saveBay } from '../../../main/services/setUp/bays.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:10 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:10:00Z')
  shop = await testShop(desk)
})

/** A wash as offered on a day, as it is held. */
async function wash(askedDate = '2026-04-15') {
  const treatmentIds = [shop.treatments.wash]
  const condition = 'good' as const
  const { askedDay } = await offers(desk, { sizeClass: 'medium', condition, treatmentIds, askedDate })
  if (!askedDay.feasible) throw new Error(askedDay.reasons.join(' '))
  const plan: OfferView['plan'] = askedDay.plan
  return { condition, treatmentIds, plan, vehicleId: shop.vehicles[0]! }
}

test('Nothing is held or confirmed for a customer who is put away', async () => {
  const { id, customerId } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: shop.vehicles[0]! },
  })
  const held = await holdPlace(desk, await wash())
  desk.setNow('2026-04-15T12:50:00Z')
  const owner = await desk.store.read.customer.findUniqueOrThrow({ where: { id: customerId } })
  await archiveCustomer(desk, { id: customerId, version: owner.version })
  await expect(confirmPlace(desk, held)).rejects.toMatchObject({ code: 'missing' })
  await expect(holdPlace(desk, await wash())).rejects.toMatchObject({ code: 'missing', field: 'vehicleId' })
  await restoreCustomer(desk, { id: customerId, version: owner.version + 1 })
  const car = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id } })
  await archiveVehicle(desk, { id, version: car.version })
  await expect(confirmPlace(desk, held)).rejects.toMatchObject({ code: 'missing' })
})

test('A lapsed hold is not confirmed while its car is booked for that time by another job', async () => {
  const input = await wash('2026-04-17')
  const { plan } = input
  const held = await holdPlace(desk, input)
  desk.setNow('2026-04-15T12:45:00Z')
  // Another bay and another person, so that only the car itself stands in the way.
  const { id: bay } = await saveBay(desk, { name: 'Bay 5', capabilities: ['wet'] })
  const other = plan.steps[0]!.crew[0] === shop.crew.Sal ? shop.crew.Mika! : shop.crew.Sal!
  const steps = plan.steps.map(step => ({ ...step, bay, crew: [other] }))
  await holdPlace(desk, { ...input, plan: { ...plan, steps } })
  await expect(confirmPlace(desk, held)).rejects.toMatchObject({ code: 'vehicle-booked' })
})

test('A plan for a day nobody can know of is refused before anything is computed', async () => {
  const input = await wash()
  const far = { ...input.plan, handover: input.plan.handover + 4 * 366 * 1440 }
  const holding = holdPlace(desk, { ...input, plan: far })
  await expect(holding).rejects.toMatchObject({ code: 'plan-far', field: 'plan.handover' })
})

test('A new caller, their car and its place are saved in one act, or nothing of it', async () => {
  const { vehicleId: _, ...wish } = await wash()
  const { plan } = wish
  const counts = async () => [
    await desk.store.read.customer.count(),
    await desk.store.read.vehicle.count(),
    await desk.store.read.job.count(),
  ]
  const before = await counts()
  const customer = { name: 'Edda Marsh', phone: '(212) 555-0177' }
  const car = { make: 'Marlo', sizeClass: 'medium', finish: 'gloss' } as const
  const taken = holdPlace(desk, { ...wish, customer, vehicle: { ...car, plate: 'KFR 204' } })
  await expect(taken).rejects.toMatchObject({ code: 'plate-taken', field: 'vehicle.plate' })
  const off = { ...plan, handover: plan.handover - 15 }
  await expect(
    holdPlace(desk, { ...wish, plan: off, customer, vehicle: { ...car, plate: 'QLM 311' } }),
  ).rejects.toMatchObject({ code: 'stale' })
  expect(await counts()).toEqual(before)

  // Two clicks at the same instant are one caller: the second finds the plate on file.
  const held = await Promise.allSettled(
    [1, 2].map(() => holdPlace(desk, { ...wish, customer, vehicle: { ...car, plate: 'QLM 311' } })),
  )
  expect(held.map(each => each.status).sort()).toEqual(['fulfilled', 'rejected'])
  expect(await counts()).toEqual(before.map(count => count + 1))
})
