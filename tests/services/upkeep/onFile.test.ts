import { beforeEach, expect, it } from 'vitest'
import { archiveVehicle } from '../../../main/services/records/vehicles.ts'
import { assertOnFile } from '../../../main/services/upkeep/onFile.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

it('knows a car on file, one put away too, from one that never was', async () => {
  const id = shop.vehicles[0] ?? ''
  await archiveVehicle(desk, { id, version: 1 })
  await expect(assertOnFile(desk.store.read, id)).resolves.toBeUndefined()
  await expect(assertOnFile(desk.store.read, 'nobody')).rejects.toMatchObject({
    code: 'missing',
    field: 'vehicleId',
  })
})
