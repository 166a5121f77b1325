import { expect, it } from 'vitest'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { saveContact } from '../../../main/services/records/contacts.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { mergeCustomers, undoMerge } from '../../../main/services/records/merge.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'
import { columnsWith, eddaOutsideIds } from './rawText.ts'

it('an erasure takes the person out under every entry that was made one with theirs, with their contacts', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  const kept = await saveCustomer(desk, { name: 'Edda Marsh', phone: '(212) 555-0177' })
  const gone = await saveCustomer(desk, { name: 'Edda Oakby', phone: '(212) 555-0177', note: 'code 4411' })
  await saveContact(desk, { customerId: kept.id, name: 'Pim Oakby', role: 'drives it' })
  const side = 'kept'
  const take = { name: side, phone: side, email: side, postal: side } as const
  const merge = await mergeCustomers(desk, { kept, gone, take })
  const { version } = await desk.store.read.customer.findUniqueOrThrow({ where: { id: kept.id } })
  await erasePerson(desk, { id: kept.id, version, accepted: true })
  const traces = [eddaOutsideIds, /marsh/i, /oakby/i, /pim/i, /212\W*555\W*0177/]
  expect(columnsWith(desk.store.source.file, traces)).toEqual([])
  expect(await desk.store.read.erasure.count()).toBe(2)
  await expect(undoMerge(desk, merge)).rejects.toMatchObject({ code: 'erased-already' })
})
