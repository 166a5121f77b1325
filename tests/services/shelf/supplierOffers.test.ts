import { beforeEach, describe, expect, it } from 'vitest'
import { archiveSize, saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { archiveOffer, saveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const offer = (change: object = {}) => ({
  supplierId: shop.supplier,
  productId: shop.coating,
  sizeId: shop.sizes.coating,
  article: 'X-1',
  containersPerPack: 6,
  breaks: [{ fromPacks: 1, packPriceMinor: 25_000 }],
  shelfLifeDays: null,
  preferred: true,
  ...change,
})
const row = (id: string) => desk.store.read.supplierOffer.findUniqueOrThrow({ where: { id } })
const audited = (entityId: string) =>
  desk.store.read.auditLine.findMany({ where: { entityId }, orderBy: { id: 'asc' }, select: { act: true } })

describe('a way to buy a product', () => {
  it('is the preferred one alone: the others of its product step back', async () => {
    const { id } = await saveOffer(desk, offer())
    expect(await row(id)).toMatchObject({ preferred: true, containersPerPack: 6, article: 'X-1', version: 1 })
    expect(await row(shop.offers.coating)).toMatchObject({ preferred: false, version: 2 })
    expect(await row(shop.offers.topper)).toMatchObject({ preferred: true, version: 1 })
  })

  it('is changed on the version that was seen, for the product it buys', async () => {
    const id = shop.offers.coating
    await saveOffer(desk, offer({ id, version: 1, article: 'X-2' }))
    expect(await row(id)).toMatchObject({ article: 'X-2', version: 2, preferred: true })
    await expect(saveOffer(desk, offer({ id, version: 1 }))).rejects.toMatchObject({ code: 'stale' })
    const other = { productId: shop.topper, sizeId: shop.sizes.topper }
    await expect(saveOffer(desk, offer({ id, version: 2, ...other }))).rejects.toMatchObject({
      code: 'missing',
    })
    expect(await row(id)).toMatchObject({ productId: shop.coating, version: 2 })
  })

  it.each([
    [{ containersPerPack: 0 }, 'containersPerPack'],
    [{ shelfLifeDays: 0 }, 'shelfLifeDays'],
    [{ sizeId: 'none' }, 'sizeId'],
    [{ supplierId: 'none' }, 'supplierId'],
    [{ breaks: [{ fromPacks: 2, packPriceMinor: 1 }] }, 'breaks.0.fromPacks'],
  ])('is refused with %o', async (change, field) => {
    await expect(saveOffer(desk, offer(change))).rejects.toMatchObject({ field })
    expect(await row(shop.offers.coating)).toMatchObject({ preferred: true, version: 1 })
  })

  it('is taken out once, and its size only after it', async () => {
    const size = { id: shop.sizes.coating, version: 1 }
    await expect(archiveSize(desk, size)).rejects.toMatchObject({ code: 'size-bought' })
    const input = { id: shop.offers.coating, version: 1, accepted: true }
    await archiveOffer(desk, input)
    expect((await row(input.id)).archivedAt).toBe(desk.now())
    await expect(archiveOffer(desk, { ...input, version: 2 })).rejects.toMatchObject({ code: 'stale' })
    await archiveSize(desk, size)
    await expect(saveOffer(desk, offer())).rejects.toMatchObject({ field: 'sizeId' })
    const acts = (await audited(shop.coating)).map(each => each.act)
    expect(acts.slice(-2)).toEqual(['offer archived', 'size archived'])
  })

  it('comes in a size of its own product', async () => {
    const { id } = await saveSize(desk, {
      productId: shop.topper,
      label: '1 l',
      labelAmount: 1_000,
      measuredAmount: null,
      tareG: null,
    })
    const size = { id, label: '1 l', labelAmount: 1_000, measuredAmount: null, tareG: null }
    await expect(saveSize(desk, { ...size, version: 1, productId: shop.coating })).rejects.toMatchObject({
      code: 'missing',
    })
  })
})
