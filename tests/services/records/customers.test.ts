import { beforeEach, describe, expect, it } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import { callersVehicle } from '../../../main/services/records/caller.ts'
import { archiveCustomer, restoreCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import type { CallerInput } from '../../../main/services/records/inputs.ts'
import { archiveVehicle, saveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

const counts = async () => [
  await desk.store.read.customer.count(),
  await desk.store.read.vehicle.count(),
  await desk.store.read.auditLine.count(),
]
const edda = { name: 'Edda Marsh', phone: '(212) 555-0177' }
const car = { plate: 'QLM 311', sizeClass: 'small', finish: 'gloss' } as const

describe('a customer who is likely on file already', () => {
  it('is asked about, with what tells them apart, and added once accepted', async () => {
    const { id } = await saveCustomer(desk, edda)
    await saveVehicle(desk, { ...car, customerId: id })
    const before = await counts()
    const again = { name: ' edda marsh', phone: '+1 212 555 0177' }
    await expect(saveCustomer(desk, again)).rejects.toMatchObject({
      code: 'known-already',
      field: 'name',
      message:
        'Somebody like this is on file already. Add them a second time?\nEdda Marsh, (212) 555-0177, QLM 311',
    })
    expect(await counts()).toEqual(before)
    const second = await saveCustomer(desk, { ...again, accepted: true })
    expect(second.id).not.toBe(id)
  })

  it('is not asked about under another name, when they are edited, or when the first was put away', async () => {
    const first = await saveCustomer(desk, edda)
    await saveCustomer(desk, { ...edda, name: 'Edda Marshall' })
    const { id, version } = await saveCustomer(desk, { ...edda, ...first, note: 'calls on Mondays' })
    await archiveCustomer(desk, { id, version })
    await saveCustomer(desk, edda)
    await restoreCustomer(desk, { id, version: version + 1 })
    expect(await desk.store.read.customer.count({ where: { name: 'Edda Marsh' } })).toBe(2)
  })

  it('is found by phone and by address even where capitals or accents differ', async () => {
    await saveCustomer(desk, { name: 'Zoë Ångström', phone: '(212) 555-0178' })
    await saveCustomer(desk, { name: 'Ólafur Berg', email: 'olafur@example.com' })
    const asked = { code: 'known-already' }
    await expect(saveCustomer(desk, { name: 'zoe angstrom', phone: '212 555 0178' })).rejects.toMatchObject(
      asked,
    )
    await expect(
      saveCustomer(desk, { name: 'Olafur berg', email: 'olafur@example.com' }),
    ).rejects.toMatchObject(asked)
  })
})

describe("a caller's vehicle", () => {
  const take = (caller: CallerInput) => act(desk, (tx, audit, at) => callersVehicle(tx, audit, at, caller))

  it('is written down with its new customer in one act', async () => {
    const vehicle = await take({ customer: edda, vehicle: car })
    const row = await desk.store.read.vehicle.findUniqueOrThrow({
      where: { id: vehicle.id },
      include: { customer: true },
    })
    expect(row).toMatchObject({ plate: 'QLM 311', customer: { name: 'Edda Marsh', phone: '+12125550177' } })
  })

  it('leaves no customer behind where its plate is taken, and names the field', async () => {
    await take({ customer: edda, vehicle: car })
    const before = await counts()
    await expect(
      take({ customer: { name: 'Ira Holt' }, vehicle: { ...car, plate: 'qlm311' } }),
    ).rejects.toMatchObject({ code: 'plate-taken', field: 'vehicle.plate' })
    await expect(take({ customer: { name: ' ' }, vehicle: car })).rejects.toMatchObject({
      field: 'customer.name',
    })
    expect(await counts()).toEqual(before)
  })

  it('asks about a customer who is known, and goes on once accepted', async () => {
    await saveCustomer(desk, edda)
    const caller = { customer: edda, vehicle: car }
    await expect(take(caller)).rejects.toMatchObject({ code: 'known-already', field: 'customer.name' })
    await expect(take({ ...caller, accepted: true })).resolves.toMatchObject({ plate: 'QLM 311' })
  })

  it('of somebody on file is added to them', async () => {
    const { id } = await saveCustomer(desk, edda)
    expect(await take({ customerId: id, vehicle: car })).toMatchObject({ customerId: id })
    await expect(take({ customerId: 'nobody', vehicle: { ...car, plate: '' } })).rejects.toMatchObject({
      code: 'missing',
      field: 'customerId',
    })
  })

  it('is refused once it or its customer was put away', async () => {
    const one = await take({ customer: edda, vehicle: car })
    const two = await take({ customer: { name: 'Ira Holt' }, vehicle: { ...car, plate: 'IRA 1' } })
    await archiveVehicle(desk, { id: one.id, version: 1 })
    await archiveCustomer(desk, { id: two.customerId, version: 1 })
    for (const { id } of [one, two])
      await expect(take({ vehicleId: id })).rejects.toMatchObject({ code: 'missing', field: 'vehicleId' })
  })
})
