import { beforeEach, expect, it } from 'vitest'
import { archiveBay, listBays, orderBays, restoreBay, saveBay } from '../../../main/services/setUp/bays.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const names = async (archived = false) => (await listBays(desk, { archived })).map(bay => bay.name)

it('lists the bays in use in their order, and those put away behind them when asked', async () => {
  const [first, ...others] = await listBays(desk)
  await orderBays(desk, { ids: [...others, first].flatMap(bay => bay?.id ?? []) })
  expect(await names()).toEqual(['Bay 2', 'Bay 3', 'Bay 4', 'Bay 1'])
  await archiveBay(desk, { id: shop.bays['Bay 3'] ?? '', version: 1 })
  expect(await names()).toEqual(['Bay 2', 'Bay 4', 'Bay 1'])
  expect(await names(true)).toEqual(['Bay 2', 'Bay 4', 'Bay 1', 'Bay 3'])
})

it('keeps a name for one bay, the one that comes back too', async () => {
  await expect(saveBay(desk, { name: 'bay 1', capabilities: ['wet'] })).rejects.toMatchObject({
    field: 'name',
  })
  const id = shop.bays['Bay 4'] ?? ''
  await archiveBay(desk, { id, version: 1 })
  await saveBay(desk, { name: 'Bay 4', capabilities: ['clean'] })
  await expect(restoreBay(desk, { id, version: 2 })).rejects.toMatchObject({ field: 'name' })
})

it('is not put away while a car is booked into it', async () => {
  await bookJob(desk, shop, { treatments: ['wash'] })
  await expect(archiveBay(desk, { id: shop.bays['Bay 1'] ?? '', version: 1 })).rejects.toMatchObject({
    code: 'bay-booked',
  })
})
