import { beforeEach, describe, expect, it } from 'vitest'
import {
  archiveProduct,
  listProducts,
  restoreProduct,
  saveProduct,
} from '../../../main/services/setUp/products.ts'
import { archiveTreatment, listTreatments } from '../../../main/services/setUp/treatments.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock } from '../shelf/shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await shelfShop(desk)
})

const product = async (id: string) => {
  const found = (await listProducts(desk, { archived: true })).find(each => each.id === id)
  if (!found) throw new Error(`no product ${id}`)
  return found
}

/** Sells nothing with the coating any more; what is booked stands. */
async function soldNoMore(): Promise<void> {
  for (const { id, version, steps } of await listTreatments(desk))
    if (steps.some(step => step.productId === shop.coating))
      await archiveTreatment(desk, { id, version, accepted: true })
}

async function order(productId: string, sizeId: string, status: string): Promise<void> {
  const line = {
    position: 0,
    sizeId,
    packs: 1,
    packCenti: 5000,
    containersPerPack: 1,
    packPriceMinor: 1,
    why: [],
  }
  await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.purchaseOrder.create({
      data: {
        number: 41,
        supplierId: shop.supplier,
        status,
        createdAt: 0,
        carriageMinor: 0,
        lines: { create: { ...line, productId } },
      },
    }),
  )
}

describe('a product is put away', () => {
  it('not while a treatment uses it, which is named', async () => {
    const { id, version } = await product(shop.coating)
    await expect(archiveProduct(desk, { id, version, accepted: true })).rejects.toMatchObject({
      code: 'product-used',
      message: expect.stringContaining('Two layers'),
    })
  })

  it('only once its booked cars, bottles and open orders were named', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await book(desk, shop)
    await soldNoMore()
    await order(shop.coating, shop.sizes.coating, 'sent')
    const { id, version } = await product(shop.coating)
    const refused = await archiveProduct(desk, { id, version }).catch(error => error)
    expect(refused).toMatchObject({ code: 'in-use', field: 'id' })
    const lines = refused.message.split('\n')
    expect(lines[0]).toBe('It is still in use:')
    expect(lines[1]).toMatch(/^Job 1 \(KFR 204\): handover /)
    expect(lines[2]).toBe('1 container on the shelf')
    expect(lines[3]).toBe('Order 41 has it on its list')
    expect((await product(id)).archivedAt).toBeNull()
    await archiveProduct(desk, { id, version, accepted: true })
    expect((await product(id)).archivedAt).toBe(desk.now())
  })

  it('at once where nothing rests on it, orders that are over or for others aside', async () => {
    await order(shop.cloths, shop.sizes.cloths, 'received')
    const { id, version } = await product(shop.cloths)
    await archiveProduct(desk, { id, version })
    expect((await product(id)).archivedAt).toBe(desk.now())
    await restoreProduct(desk, { id, version: version + 1 })
    expect((await product(id)).archivedAt).toBeNull()
  })
})

describe('a product’s cure profile', () => {
  it('is refused by its field, a temperature in the shop’s unit', async () => {
    const { id, version, name, kind, cureProfile } = await product(shop.coating)
    if (!cureProfile) throw new Error('a coating without a profile')
    const temperature = { minC: 10, maxC: 118 / 1.8 }
    await expect(
      saveProduct(desk, { id, version, name, kind, cureProfile: { ...cureProfile, temperature } }),
    ).rejects.toMatchObject({
      field: 'cureProfile.temperature.maxC',
      // 65.6 °C by NIST Special Publication 811, appendix B.8.
      message: '150 °F cannot be right; use -4 °F to 140 °F.',
    })
  })

  it('goes with coatings and toppers, and with nothing else', async () => {
    const { cureProfile } = await product(shop.coating)
    await expect(
      saveProduct(desk, { name: 'Ovrel Three', kind: 'coating', cureProfile: null }),
    ).rejects.toThrow('needs its cure profile')
    await expect(saveProduct(desk, { name: 'Pads', kind: 'consumable', cureProfile })).rejects.toThrow(
      'does not cure on the car',
    )
  })

  it('is changed under booked cars only once they were named, and not at all where the change is none', async () => {
    await book(desk, shop)
    const { id, version, name, kind, cureProfile } = await product(shop.coating)
    if (!cureProfile) throw new Error('a coating without a profile')
    const slower = { ...cureProfile, handoverMin: cureProfile.handoverMin + 60 }
    const change = { id, version, name, kind, cureProfile: slower }
    await expect(saveProduct(desk, change)).rejects.toMatchObject({
      code: 'touches-bookings',
      field: 'cureProfile',
      message: expect.stringContaining('Job 1 (KFR 204)'),
    })
    await saveProduct(desk, { ...change, name: 'Ovrel Deux', cureProfile })
    await saveProduct(desk, { ...change, version: version + 1, accepted: true })
    expect((await product(id)).cureProfile?.handoverMin).toBe(cureProfile.handoverMin + 60)
  })

  it('keeps its kind while a treatment uses it, and its name its own', async () => {
    const { id, version, cureProfile } = await product(shop.coating)
    await expect(
      saveProduct(desk, { id, version, name: 'Ovrel Two', kind: 'topper', cureProfile }),
    ).rejects.toMatchObject({ code: 'product-used', field: 'kind' })
    await expect(
      saveProduct(desk, { id, version, name: ' ovrel VEIL', kind: 'coating', cureProfile }),
    ).rejects.toMatchObject({ field: 'name' })
  })
})
