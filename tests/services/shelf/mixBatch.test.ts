import { beforeEach, expect, it } from 'vitest'
import { shelfAhead } from '../../../main/services/shelf/ahead.ts'
import { bottleLabel } from '../../../main/services/shelf/bottleLabel.ts'
import { removeDilution, saveDilution } from '../../../main/services/shelf/dilutions.ts'
import { mixBatch } from '../../../main/services/shelf/mixBatch.ts'
import { shelfProduct } from '../../../main/services/shelf/productPage.ts'
import { wasteStock } from '../../../main/services/shelf/stockChanges.ts'
import { shelfValue } from '../../../main/services/shelf/value.ts'
import { readPdf } from '../../documents/readPdf.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, paleRinse, recipe, type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop
/** A ready-to-use product, made one to nine from the topper that stands for a concentrate here. */
let ready: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
  ready = await paleRinse(desk, shop)
})

const page = (id: string) => shelfProduct(desk, { id })

it('takes its share from the concentrate, keeps its own days, and costs what went into it', async () => {
  const [lotId] = await stock(desk, shop.topper, shop.sizes.topper, 1, {
    costMinor: 2_000,
    expiresOn: '2026-05-01',
  })
  const { words, lots } = await mixBatch(desk, { productId: ready, amount: 1_000 })
  expect(words).toEqual(['mixed 1000 ml of Pale Rinse as no. 2: 100 ml of Ovrel Veil, 900 ml of water'])
  // Thirty days would be 15 May: the concentrate's own date comes first.
  expect(lots).toMatchObject([
    { number: 2, onHand: 1_000, state: 'open', lastOn: '2026-05-01', waterParts: 9 },
  ])
  expect((await page(shop.topper)).lots).toMatchObject([{ id: lotId, onHand: 400, openedOn: '2026-04-15' }])
  const { products } = await shelfValue(desk)
  // A fifth of the bottle is a fifth of what was paid for it.
  expect(products.find(each => each.productId === ready)).toMatchObject({ averageMinor: 400 })
  expect(products.find(each => each.productId === shop.topper)).toMatchObject({ averageMinor: 1_600 })
  const label = await readPdf(
    (await bottleLabel(desk, { lotId: lots[0]!.id, origin: 'lustrum://app' })).bytes,
  )
  expect(JSON.stringify(label)).toContain('mixed 15 April 2026, 1:9 with water')
})

it('takes no more than there is, and nothing at all where it cannot', async () => {
  await expect(mixBatch(desk, { productId: ready, amount: 1_000 })).rejects.toMatchObject({
    code: 'beyond-stock',
  })
  await stock(desk, shop.topper, shop.sizes.topper, 1)
  await expect(mixBatch(desk, { productId: ready, amount: 5_001 })).rejects.toMatchObject({
    code: 'beyond-stock',
  })
  await expect(mixBatch(desk, { productId: ready, amount: 0 })).rejects.toMatchObject({
    code: 'amount-not-positive',
  })
  await expect(mixBatch(desk, { productId: shop.coating, amount: 10 })).rejects.toMatchObject({
    code: 'missing',
  })
  expect(await desk.store.read.lot.count()).toBe(1)
})

it('counts what bookings draw back to the concentrate, less what batches serve', async () => {
  await stock(desk, shop.topper, shop.sizes.topper, 1)
  await stock(desk, shop.coating, shop.sizes.coating, 2)
  await recipe(desk, shop.treatments.twoLayers, 0, ready, 600, 60)
  await book(desk, shop)
  const booked = async (id: string, productIds?: string[]) => {
    const found = (
      await shelfAhead(desk, desk.store.read, { ...(productIds && { productIds }) })
    ).products.get(id)!
    return found.booked.reduce((sum, draw) => sum + draw.centi, 0) + found.dueTodayCenti
  }
  expect([await booked(ready), await booked(shop.topper)]).toEqual([0, 6_000])
  // Asked for alone, as its page does, the concentrate still knows of what is made from it.
  expect(await booked(shop.topper, [shop.topper])).toBe(6_000)
  const { lots } = await mixBatch(desk, { productId: ready, amount: 400 })
  expect([await booked(ready), await booked(shop.topper)]).toEqual([40_000, 2_000])
  await wasteStock(desk, { productId: ready, lotId: lots[0]!.id, amount: 400, discard: 'cloudy', reason: '' })
  expect(await booked(shop.topper)).toBe(6_000)
})

it('is refused where the units differ, the concentrate is mixed itself, or somebody else saved first', async () => {
  const share = { productId: ready, concentrateId: shop.topper, waterParts: 4, lifeDays: 14, version: 1 }
  for (const [change, code] of [
    [{ concentrateId: shop.cloths }, 'unit-differs'],
    [{ concentrateId: ready }, 'thinned-twice'],
    [{ productId: shop.coating, concentrateId: ready, version: 0 }, 'thinned-twice'],
    [{ productId: shop.topper, concentrateId: shop.coating, version: 0 }, 'thinned-twice'],
    [{ waterParts: 0 }, 'share-bad'],
    [{ version: 0 }, 'stale'],
  ] as const)
    await expect(saveDilution(desk, { ...share, ...change })).rejects.toMatchObject({ code })
  await saveDilution(desk, share)
  expect(await page(ready)).toMatchObject({
    madeFrom: { waterParts: 4, lifeDays: 14, version: 2 },
    makes: [],
  })
  expect((await page(shop.topper)).makes).toEqual([{ productId: ready, words: 'Pale Rinse, 1:4 with water' }])
  await expect(removeDilution(desk, { productId: ready, version: 1 })).rejects.toMatchObject({
    code: 'stale',
  })
  await removeDilution(desk, { productId: ready, version: 2 })
  expect((await page(ready)).madeFrom).toBeNull()
})
