import { afterEach, beforeEach, expect, it } from 'vitest'
import { archiveCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { findCustomers } from '../../../main/services/records/customersFind.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
  await testShop(desk)
})
afterEach(() => desk.close())

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

it('reads again after a save, and leaves out who was put away', async () => {
  expect(await found('Odd')).toEqual([])
  const saved = await saveCustomer(desk, { name: 'Odd Lyng', note: '' })
  expect(await found('Odd')).toEqual(['Odd Lyng'])
  await archiveCustomer(desk, saved)
  expect(await found('Odd')).toEqual([])
  expect(await found('Odd', true)).toEqual(['Odd Lyng'])
})
