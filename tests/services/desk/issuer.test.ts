import { expect, test } from 'vitest'
import { letterheadOf } from '../../../main/services/desk/issuer.ts'
import { getShop, updateShop } from '../../../main/services/setUp/shop.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('The head of a paper has the shop’s lines as they are read at home, on the paper of its country', async () => {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  await testShop(desk)
  const shop = (await getShop(desk))!
  await updateShop(desk, {
    ...shop,
    phone: '+1 212 555 0101',
    address: '4 Quarry Lane\r\nAshdown',
    email: 'hello@ashdown.example.com',
  })
  expect(await letterheadOf(desk.store.read)).toEqual({
    issuer: {
      name: shop.name,
      lines: ['4 Quarry Lane', 'Ashdown', '(212) 555-0101', 'hello@ashdown.example.com'],
      logo: null,
      colour: '#31456b',
    },
    // North America writes on Letter (ISO 216 elsewhere).
    paper: 'LETTER',
  })
})
