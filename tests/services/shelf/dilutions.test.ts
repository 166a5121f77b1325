import { beforeEach, expect, it } from 'vitest'
import { offers } from '../../../main/services/booking/offers.ts'
import { shelfAhead } from '../../../main/services/shelf/ahead.ts'
import { mixBatch } from '../../../main/services/shelf/mixBatch.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { paleRinse, recipe, type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop
let ready: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
  ready = await paleRinse(desk, shop)
})

it('has a batch keep its own days where the concentrate keeps longer, and its use counted as the concentrate’s', async () => {
  await stock(desk, shop.topper, shop.sizes.topper, 1)
  const { lots } = await mixBatch(desk, { productId: ready, amount: 500 })
  expect(lots).toMatchObject([{ lastOn: '2026-05-15', batch: 'K-1' }])
  await takeStock(desk, { productId: ready, lotId: lots[0]!.id, amount: 100, reason: 'walk-in' })
  const { products } = await shelfAhead(desk, desk.store.read)
  const used = (id: string) => products.get(id)!.outlook.demand.perDayCenti
  // The 50 ml that were mixed are no use: they would be counted twice.
  expect([used(ready), used(shop.topper)]).toEqual([0, 1_000])
})

it('has a booking ask for the concentrate, not for a product nobody sells', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 2)
  await recipe(desk, shop.treatments.twoLayers, 0, ready, 600, 60)
  const wish = {
    sizeClass: 'medium' as const,
    condition: 'good' as const,
    treatmentIds: [shop.treatments.twoLayers],
  }
  const lacking = async () => {
    const { soonest } = await offers(desk, wish)
    return soonest.feasible ? soonest.shelf.short.map(({ productId, need }) => [productId, need]) : null
  }
  expect(await lacking()).toEqual([[shop.topper, 60]])
  await stock(desk, shop.topper, shop.sizes.topper, 1)
  expect(await lacking()).toEqual([])
})
