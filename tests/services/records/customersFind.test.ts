import { beforeEach, expect, it } from 'vitest'
import { archiveCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import type { VehicleInput } from '../../../main/services/records/inputs.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { changeHands } from '../../../main/services/upkeep/changeHands.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})

const found = async (text: string, archived = false) =>
  (await findCustomers(desk, { text, archived })).customers.map(customer => customer.name)

it('finds by every word typed, accents, capitals and separators aside', async () => {
  expect(await found('VALE ines')).toEqual(['Ines Vale'])
  expect(await found('kfr204')).toEqual(['Ines Vale'])
  expect(await found('Inès')).toEqual(['Ines Vale'])
  expect(await found('ines birk')).toEqual([])
})

it('finds by a part of a phone number, a trunk zero aside', async () => {
  await saveCustomer(desk, { name: 'Petra Quill', phone: '(212) 555-0187', note: '', accepted: true })
  expect(await found('5550187')).toEqual(['Petra Quill'])
  expect(await found('05550187')).toEqual(['Petra Quill'])
})

it('gives a page at a time, none of them twice, and says where the rest begins', async () => {
  for (let n = 0; n < 5; n++) await saveCustomer(desk, { name: `Odd Lyng ${n}`, note: '' })
  const pages: string[] = []
  let cursor: number | null = 0
  for (let turns = 0; cursor !== null && turns < 9; turns++) {
    const page: Awaited<ReturnType<typeof findCustomers>> = await findCustomers(desk, {
      text: 'lyng',
      limit: 2,
      cursor,
    })
    expect(page.total).toBe(5)
    pages.push(...page.customers.map(({ name }) => name))
    cursor = page.next
  }
  expect(pages).toEqual([0, 1, 2, 3, 4].map(n => `Odd Lyng ${n}`))
})

it('follows a car to its next owner, and a plate to its next spelling', async () => {
  expect(await found('kfr204')).toEqual(['Ines Vale'])
  const next = await saveCustomer(desk, { name: 'Odd Lyng', note: '' })
  const car = await desk.store.read.vehicle.findFirstOrThrow({ where: { plate: 'KFR 204' } })
  await changeHands(desk, { vehicleId: car.id, version: car.version, to: { customerId: next.id } })
  expect(await found('kfr204')).toEqual(['Odd Lyng'])
  expect(await found('ines vale')).toEqual(['Ines Vale'])
  await saveVehicle(desk, {
    ...(car as never as VehicleInput),
    customerId: next.id,
    version: car.version + 1,
    plate: 'KFR 999',
  })
  expect(await found('kfr204')).toEqual([])
  expect(await found('kfr999')).toEqual(['Odd Lyng'])
})

it('reads everybody anew after more saves than it follows one by one', async () => {
  expect(await found('Bulk')).toEqual([])
  const names = Array.from({ length: 450 }, (_, n) => `Bulk ${n}`)
  await desk.store.transact({ who: 'test', at: desk.now() }, async (tx, audit) => {
    for (const name of names) {
      const { id } = await tx.customer.create({ data: { name } })
      audit({ act: 'add', entity: 'customer', entityId: id })
    }
  })
  expect((await findCustomers(desk, { text: 'bulk' })).total).toBe(450)
})

it('reads again after a save, and leaves out who was put away', async () => {
  expect(await found('Odd')).toEqual([])
  const saved = await saveCustomer(desk, { name: 'Odd Lyng', note: '' })
  expect(await found('Odd')).toEqual(['Odd Lyng'])
  await archiveCustomer(desk, saved)
  expect(await found('Odd')).toEqual([])
  expect(await found('Odd', true)).toEqual(['Odd Lyng'])
})
