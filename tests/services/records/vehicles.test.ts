import { beforeEach, expect, it } from 'vitest'
import { archiveVehicle, restoreVehicle, saveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const car = async (plate: string, change: object = {}) => {
  const { customerId } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: shop.vehicles[0] ?? '' },
  })
  return saveVehicle(desk, { customerId, plate, sizeClass: 'small', finish: 'gloss', ...change })
}

it('bears a plate no other car in use bears, whatever stands between its signs', async () => {
  await expect(car('KFR-204')).rejects.toMatchObject({ code: 'plate-taken', field: 'plate' })
  const id = shop.vehicles[0] ?? ''
  await archiveVehicle(desk, { id, version: 1 })
  await car('KFR-204')
  await expect(restoreVehicle(desk, { id, version: 2 })).rejects.toMatchObject({ code: 'plate-taken' })
})

it('may do without a plate, as often as need be', async () => {
  await car('')
  await expect(car('')).resolves.toMatchObject({ version: 1 })
})

it('is of a year in which there were cars', async () => {
  await expect(car('NEW 1', { year: 1885 })).rejects.toMatchObject({ field: 'year' })
  await expect(car('NEW 1', { year: 2029 })).rejects.toMatchObject({ field: 'year' })
  await expect(car('NEW 1', { year: 2028 })).resolves.toMatchObject({ warning: null })
})
