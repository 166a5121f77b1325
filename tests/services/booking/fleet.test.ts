import { beforeEach, expect, it } from 'vitest'
import { bookPlace } from '../../../main/services/booking/booking.ts'
import { bookFleet, holdFleet, releaseFleet } from '../../../main/services/booking/fleet.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { archiveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const wish = () => ({ condition: 'good' as const, treatmentIds: [shop.treatments.correction] })
const jobs = () => desk.store.read.job.findMany({ orderBy: { number: 'asc' } })

it('each car has the place it would be given one by one, with those before it booked', async () => {
  const vehicleIds = shop.vehicles.slice(0, 3)
  const held = await holdFleet(desk, { ...wish(), vehicleIds })
  expect((await jobs()).map(job => job.status)).toEqual(['held', 'held', 'held'])
  const other = await makeDesk()
  const alone = await testShop(other)
  for (const [i, place] of held.places.entries()) {
    const own = { condition: 'good' as const, treatmentIds: [alone.treatments.correction] }
    const { soonest } = await offers(other, { ...own, sizeClass: 'medium' })
    if (!soonest.feasible) throw new Error('no place')
    expect(place).toMatchObject({ dropOffAt: soonest.dropOffAt, handoverAt: soonest.handoverAt })
    await bookPlace(other, { ...own, vehicleId: alone.vehicles[i]!, plan: soonest.plan })
  }
})

it('all are booked, or let go, in one act', async () => {
  const { places } = await holdFleet(desk, { ...wish(), vehicleIds: shop.vehicles.slice(0, 2) })
  await expect(
    bookFleet(desk, { places: [places[0]!, { jobId: places[1]!.jobId, version: 9 }] }),
  ).rejects.toMatchObject({ code: 'stale' })
  expect((await jobs()).map(job => job.status)).toEqual(['held', 'held'])
  await bookFleet(desk, { places })
  expect((await jobs()).map(job => job.status)).toEqual(['booked', 'booked'])
  const more = await holdFleet(desk, { ...wish(), vehicleIds: shop.vehicles.slice(2, 4) })
  await releaseFleet(desk, more)
  expect((await jobs()).map(job => job.status)).toEqual(['booked', 'booked', 'cancelled', 'cancelled'])
})

it('nothing is held where one car has no place or is put away, and the car is named by its place in the list', async () => {
  const [first, second] = shop.vehicles
  await archiveVehicle(desk, { id: second!, version: 1 })
  await expect(holdFleet(desk, { ...wish(), vehicleIds: [first!, second!] })).rejects.toMatchObject({
    code: 'missing',
    field: 'vehicleIds.1',
  })
  await expect(holdFleet(desk, { ...wish(), vehicleIds: [first!, first!] })).rejects.toMatchObject({
    code: 'vehicle-booked',
    field: 'vehicleIds.1',
  })
  expect(await jobs()).toEqual([])
})
