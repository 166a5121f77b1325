import { beforeEach, expect, it } from 'vitest'
import { findAlike } from '../../../main/services/records/alike.ts'
import { saveContact } from '../../../main/services/records/contacts.ts'
import { archiveCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import type { AlikeInput } from '../../../main/services/records/inputs.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let zoe: { id: string; version: number }
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
  zoe = await saveCustomer(desk, { name: 'Zoë Ångström', phone: '(212) 555-0178', email: 'zoe@example.com' })
  await saveVehicle(desk, {
    customerId: zoe.id,
    plate: 'QLM 301',
    vin: '1M8GDM9AXKP042788',
    sizeClass: 'small',
    finish: 'gloss',
  })
})

const found = async (typed: AlikeInput) => (await findAlike(desk, typed)).map(({ id, why }) => [id, why])

// Common practice, no source: what a front desk takes for the same person.
it.each<[AlikeInput, string[]]>([
  [{ phone: '212 555 0178' }, ['phone']],
  [{ email: 'ZOE@example.com' }, ['e-mail']],
  [{ name: 'angstrom, zoe' }, ['name']],
  [{ name: 'Zoe Angstrm' }, ['much the same name']],
  // A zero is read as an O.
  [{ plate: 'qlm3o1' }, ['plate']],
  [{ vin: '1m8gdm9axkp042788' }, ['VIN']],
  [{ name: 'Zoe Angstrom', phone: '+12125550178' }, ['phone', 'name']],
])('%j is likely on file', async (typed, why) => {
  expect(await found(typed)).toEqual([[zoe.id, why]])
})

it('nobody is likely on file by nothing, by half a plate, or by themselves', async () => {
  expect(await found({})).toEqual([])
  expect(await found({ plate: 'QL' })).toEqual([])
  expect(await found({ name: 'Zoë Ångström', exceptId: zoe.id })).toEqual([])
})

it('a contact’s number counts, the likeliest leads, and who was put away is shown as such', async () => {
  const fleet = await saveCustomer(desk, { name: 'Kestrel Couriers', kind: 'fleet' })
  await saveContact(desk, { customerId: fleet.id, name: 'Ira Holt', phone: '(212) 555-0199' })
  expect(await found({ phone: '2125550199', name: 'Zoe Angstrom' })).toEqual([
    [fleet.id, ['phone']],
    [zoe.id, ['name']],
  ])
  await archiveCustomer(desk, fleet)
  expect(await findAlike(desk, { phone: '2125550199' })).toMatchObject([{ archivedAt: expect.any(Number) }])
})
