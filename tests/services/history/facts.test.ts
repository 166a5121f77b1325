import { expect, it } from 'vitest'
import { speaking } from '../../../main/services/desk/speaking.ts'
import { factsOf } from '../../../main/services/history/facts.ts'
import type { AuditLine } from '../../../main/store/rows.ts'
import { makeDesk } from '../makeDesk.ts'
import { shelfShop } from '../shelf/shelfShop.ts'

const line = (entityId: string, detail: object = {}) => ({ entityId, detail }) as unknown as AuditLine

it('knows the unit of each product and bottle that lines are about or name, and of nothing else', async () => {
  const desk = await makeDesk()
  const shop = await shelfShop(desk)
  const lot = await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    const size = await tx.containerSize.findFirstOrThrow({ where: { productId: shop.coating } })
    return tx.lot.create({
      data: { number: 977, productId: shop.coating, sizeId: size.id, receivedOn: '2026-04-01' },
    })
  })
  const { unitOf } = await factsOf(desk.store.read, [line('x', { lotId: lot.id })], desk.now())
  expect([lot.id, shop.coating, 'x'].map(unitOf)).toEqual(['ml', 'ml', undefined])
  const about = await factsOf(desk.store.read, [line(shop.coating)], desk.now())
  expect([lot.id, shop.coating].map(about.unitOf)).toEqual([undefined, 'ml'])
})

it('writes times and money as the shop does', async () => {
  const desk = await makeDesk('2026-04-20T14:00:00Z')
  await shelfShop(desk)
  const { when, money } = await factsOf(desk.store.read, [], desk.now())
  expect(when(desk.now() + 10 * 1440)).toBe('Thu 30 April 10:00')
  expect(money(123_450)).toBe('$1,234.50')
  expect(speaking('de', () => money(123_450))).toBe('1.234,50\u00A0$')
})
