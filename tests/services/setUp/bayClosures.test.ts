import { beforeEach, expect, it } from 'vitest'
import { removeClosure, saveClosure } from '../../../main/services/setUp/bayClosures.ts'
import { archiveBay, listBays } from '../../../main/services/setUp/bays.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

it('closes a bay once at a time, and opens it again', async () => {
  const bayId = shop.bays['Bay 3'] ?? ''
  const fromAt = desk.now() + 1440
  const closure = { bayId, fromAt, toAt: fromAt + 120, reason: 'new floor' }
  const { id } = await saveClosure(desk, closure)
  await expect(saveClosure(desk, { ...closure, fromAt: fromAt + 60 })).rejects.toMatchObject({
    field: 'fromAt',
  })
  await saveClosure(desk, { ...closure, bayId: shop.bays['Bay 4'] ?? '' })
  await removeClosure(desk, { id, version: 1 })
  expect((await listBays(desk)).map(bay => bay.closures.length)).toEqual([0, 0, 0, 1])
})

it('is refused for a bay that was put away', async () => {
  const bayId = shop.bays['Bay 3'] ?? ''
  await archiveBay(desk, { id: bayId, version: 1 })
  const fromAt = desk.now() + 1440
  await expect(saveClosure(desk, { bayId, fromAt, toAt: fromAt + 60, reason: '' })).rejects.toMatchObject({
    field: 'bayId',
  })
})
