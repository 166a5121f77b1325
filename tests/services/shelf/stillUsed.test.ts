import { beforeEach, describe, expect, it } from 'vitest'
import { archiveSize, restoreSize, saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { archiveOffer, restoreOffer, saveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { archiveSupplier, restoreSupplier, saveSupplier } from '../../../main/services/shelf/suppliers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

/** An order as it stands in the book, whatever became of it. */
async function order(number: number, status: string, productId: string, sizeId: string): Promise<void> {
  const line = { position: 0, packs: 1, packCenti: 5000, containersPerPack: 1, packPriceMinor: 1, why: [] }
  const lines = { create: { ...line, productId, sizeId } }
  const data = { number, supplierId: shop.supplier, status, createdAt: 0, lines }
  await desk.store.transact({ who: 'test', at: 0 }, tx => tx.purchaseOrder.create({ data }))
}

/** What is asked before it is put away, a line each. */
async function asked(archiving: Promise<void>): Promise<string[]> {
  const refused = await archiving.then(
    () => null,
    error => error,
  )
  expect(refused).toMatchObject({ code: 'in-use', field: 'id' })
  return refused.message.split('\n')
}

describe('a supplier', () => {
  const supplier = () => desk.store.read.supplier.findUniqueOrThrow({ where: { id: shop.supplier } })

  it('is put away once what it sells was named, and what is bought nowhere else', async () => {
    const { id: other } = await desk.store.transact({ who: 'test', at: 0 }, async tx => {
      const { id: _, ...row } = await supplier()
      return tx.supplier.create({
        data: { ...row, name: 'Dunmere Trade', weekdays: [1, 2, 3, 4, 5], closedOn: [] },
      })
    })
    await saveOffer(desk, {
      supplierId: other,
      productId: shop.topper,
      sizeId: shop.sizes.topper,
      article: '',
      containersPerPack: 1,
      breaks: [{ fromPacks: 1, packPriceMinor: 3_000 }],
      shelfLifeDays: null,
      preferred: false,
    })
    const input = { id: shop.supplier, version: 1 }
    expect(await asked(archiveSupplier(desk, input))).toEqual([
      'What it sells you goes with it:',
      'Ovrel Two, 50 ml: there is no other way to buy it',
      'Ovrel Veil, 500 ml: orders are proposed from it',
    ])
    expect((await supplier()).archivedAt).toBeNull()
    expect(await desk.store.read.supplierOffer.count({ where: { archivedAt: null } })).toBe(3)
    await archiveSupplier(desk, { ...input, accepted: true })
    expect((await supplier()).archivedAt).toBe(desk.now())
    expect(await desk.store.read.supplierOffer.findMany({ where: { archivedAt: null } })).toMatchObject([
      { supplierId: other },
    ])
  })

  it('with an open order stays, whoever says yes', async () => {
    await order(41, 'draft', shop.coating, shop.sizes.coating)
    await expect(
      archiveSupplier(desk, { id: shop.supplier, version: 1, accepted: true }),
    ).rejects.toMatchObject({ code: 'orders-open', message: expect.stringContaining('Order 41') })
  })

  it('that sells nothing goes at once', async () => {
    for (const id of Object.values(shop.offers)) await archiveOffer(desk, { id, version: 1, accepted: true })
    await archiveSupplier(desk, { id: shop.supplier, version: 1 })
    expect((await supplier()).archivedAt).toBe(desk.now())
  })
})

describe('a container size', () => {
  const size = (id: string) => desk.store.read.containerSize.findUniqueOrThrow({ where: { id } })

  it('is put away once its bottles and the open orders for it were named', async () => {
    const id = shop.sizes.coating
    await archiveOffer(desk, { id: shop.offers.coating, version: 1, accepted: true })
    const [, second] = await stock(desk, shop.coating, id, 2)
    await stock(desk, shop.topper, shop.sizes.topper, 1)
    await order(41, 'partly', shop.coating, id)
    await order(42, 'received', shop.coating, id)
    await order(43, 'sent', shop.topper, shop.sizes.topper)
    expect(await asked(archiveSize(desk, { id, version: 1 }))).toEqual([
      'It is still in use:',
      '2 containers on the shelf',
      'Order 41 has it on its list',
    ])
    await takeStock(desk, { productId: shop.coating, lotId: second!, amount: 50, reason: 'walk-in' })
    expect((await asked(archiveSize(desk, { id, version: 1 })))[1]).toBe('1 container on the shelf')
    expect((await size(id)).archivedAt).toBeNull()
    await archiveSize(desk, { id, version: 1, accepted: true })
    expect((await size(id)).archivedAt).toBe(desk.now())
  })

  it('that nothing came in or is on order in goes at once', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    const { id } = await saveSize(desk, {
      productId: shop.coating,
      label: '100 ml',
      labelAmount: 100,
      measuredAmount: null,
      tareG: null,
    })
    await archiveSize(desk, { id, version: 1 })
    expect((await size(id)).archivedAt).toBe(desk.now())
  })
})

describe('a way to buy', () => {
  const offer = (id: string) => desk.store.read.supplierOffer.findUniqueOrThrow({ where: { id } })
  const add = (preferred: boolean) =>
    saveOffer(desk, {
      supplierId: shop.supplier,
      productId: shop.coating,
      sizeId: shop.sizes.coating,
      article: 'C-6',
      containersPerPack: 6,
      breaks: [{ fromPacks: 1, packPriceMinor: 26_000 }],
      shelfLifeDays: null,
      preferred,
    })

  it('that is the only one is put away once that and the open orders by it were named', async () => {
    const id = shop.offers.coating
    await order(41, 'draft', shop.coating, shop.sizes.coating)
    await order(42, 'cancelled', shop.coating, shop.sizes.coating)
    expect(await asked(archiveOffer(desk, { id, version: 1 }))).toEqual([
      'It is still in use:',
      'Ovrel Two, 50 ml: there is no other way to buy it',
      'Order 41 has it on its list',
    ])
    expect((await offer(id)).archivedAt).toBeNull()
    await archiveOffer(desk, { id, version: 1, accepted: true })
    expect((await offer(id)).archivedAt).toBe(desk.now())
  })

  it('that orders are proposed from is named as that, and one beside it goes at once', async () => {
    const { id: preferred } = await add(true)
    expect(await asked(archiveOffer(desk, { id: preferred, version: 1 }))).toEqual([
      'It is still in use:',
      'Ovrel Two, 50 ml: orders are proposed from it',
    ])
    await archiveOffer(desk, { id: shop.offers.coating, version: 2 })
    expect((await offer(shop.offers.coating)).archivedAt).toBe(desk.now())
  })
})

describe('what was put away', () => {
  it('is taken back in turn: supplier and size before what they sell, which steps behind the preferred offer', async () => {
    const { read } = desk.store
    const id = shop.offers.coating
    await archiveOffer(desk, { id, version: 1, accepted: true })
    await archiveSize(desk, { id: shop.sizes.coating, version: 1 })
    await archiveSupplier(desk, { id: shop.supplier, version: 1, accepted: true })
    await expect(restoreOffer(desk, { id, version: 2 })).rejects.toMatchObject({
      code: 'put-away',
      message: 'Carrow Supply is put away: take that back into use first.',
    })
    await restoreSupplier(desk, { id: shop.supplier, version: 2 })
    await expect(restoreOffer(desk, { id, version: 2 })).rejects.toThrow('50 ml is put away')
    await restoreSize(desk, { id: shop.sizes.coating, version: 2 })
    await expect(restoreOffer(desk, { id, version: 1 })).rejects.toMatchObject({ code: 'stale' })
    await restoreOffer(desk, { id, version: 2 })
    const offer = () => read.supplierOffer.findUniqueOrThrow({ where: { id } })
    expect(await offer()).toMatchObject({ archivedAt: null, preferred: true, version: 3 })
    await expect(restoreOffer(desk, { id, version: 3 })).rejects.toMatchObject({ code: 'stale' })

    await archiveOffer(desk, { id, version: 3, accepted: true })
    await saveOffer(desk, {
      supplierId: shop.supplier,
      productId: shop.coating,
      sizeId: shop.sizes.coating,
      article: 'C-6',
      containersPerPack: 6,
      breaks: [{ fromPacks: 1, packPriceMinor: 25_000 }],
      shelfLifeDays: null,
      preferred: true,
    })
    await restoreOffer(desk, { id, version: (await offer()).version })
    expect(await offer()).toMatchObject({ archivedAt: null, preferred: false })
    const lines = await read.auditLine.findMany({ where: { act: { contains: 'restored' } } })
    expect(lines.map(({ act, entityId }) => [act, entityId])).toEqual([
      ['restored', shop.supplier],
      ['size restored', shop.coating],
      ['offer restored', shop.coating],
      ['offer restored', shop.coating],
    ])
  })

  it('a supplier stays away while another bears its name', async () => {
    await archiveSupplier(desk, { id: shop.supplier, version: 1, accepted: true })
    const { id: _, version: __, archivedAt: ___, ...fields } = await supplierRow()
    await saveSupplier(desk, { ...fields, weekdays: [1], closedOn: [], name: 'carrow supply' })
    await expect(restoreSupplier(desk, { id: shop.supplier, version: 2 })).rejects.toThrow(/carrow supply/i)
    expect((await supplierRow()).archivedAt).not.toBeNull()
  })
})

const supplierRow = () => desk.store.read.supplier.findUniqueOrThrow({ where: { id: shop.supplier } })
