import { beforeEach, expect, it } from 'vitest'
import { removeContact, saveContact } from '../../../main/services/records/contacts.ts'
import { getCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
let customerId: string
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
  customerId = (
    await saveCustomer(desk, { name: 'Kestrel Couriers', kind: 'fleet', tags: ['Monthly', 'monthly '] })
  ).id
})

const contacts = async () => (await getCustomer(desk, { id: customerId })).contacts

it('one at most is called first, and the customer is found by any of them and by a tag', async () => {
  const ira = await saveContact(desk, {
    customerId,
    name: 'Ira Holt',
    phone: '(212) 555-0199',
    callFirst: true,
  })
  await saveContact(desk, { customerId, name: 'Ada Lund', email: 'ada@example.com', callFirst: true })
  expect(await contacts()).toMatchObject([
    { name: 'Ada Lund', callFirst: true },
    { name: 'Ira Holt', callFirst: false, phone: '+12125550199', version: 2 },
  ])
  for (const text of ['holt', '555 0199', 'ada@example', 'monthly'])
    expect((await findCustomers(desk, { text })).customers).toMatchObject([{ id: customerId }])
  await expect(saveContact(desk, { ...ira, customerId, name: 'Ira' })).rejects.toMatchObject({
    code: 'stale',
  })
  expect((await getCustomer(desk, { id: customerId })).tags).toEqual(['Monthly'])
})

it('one who is taken out is found no more', async () => {
  const ira = await saveContact(desk, { customerId, name: 'Ira Holt' })
  await removeContact(desk, ira)
  expect(await contacts()).toEqual([])
  expect((await findCustomers(desk, { text: 'holt' })).total).toBe(0)
  await expect(removeContact(desk, ira)).rejects.toMatchObject({ code: 'missing' })
})

it('is refused without a name, of nobody, of another customer, and past thirty', async () => {
  await expect(saveContact(desk, { customerId, name: ' ' })).rejects.toMatchObject({ field: 'name' })
  await expect(saveContact(desk, { customerId: 'nobody', name: 'Ira' })).rejects.toMatchObject({
    code: 'missing',
  })
  const other = await saveCustomer(desk, { name: 'Oda Brandt' })
  const ira = await saveContact(desk, { customerId, name: 'Ira Holt' })
  await expect(saveContact(desk, { ...ira, customerId: other.id, name: 'Ira' })).rejects.toMatchObject({
    code: 'missing',
  })
  for (let i = 1; i < 30; i++) await saveContact(desk, { customerId, name: `Driver ${i}` })
  await expect(saveContact(desk, { customerId, name: 'One more' })).rejects.toMatchObject({
    code: 'contacts-many',
  })
})
