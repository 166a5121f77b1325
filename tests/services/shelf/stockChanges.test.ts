import { beforeEach, describe, expect, it } from 'vitest'
import { saveShelfProduct, saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { getRules, saveRules } from '../../../main/services/shelf/shelfRules.ts'
import {
  countBottle,
  openBottle,
  returnStock,
  takeStock,
  wasteStock,
} from '../../../main/services/shelf/stockChanges.ts'
import { archiveSupplier, listSuppliers, saveSupplier } from '../../../main/services/shelf/suppliers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const moves = () => desk.store.read.stockMove.count()

describe('a bottle', () => {
  it('opened has its own date from then on, and is not opened twice', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1, { expiresOn: '2027-01-01' })
    const { lots, words } = await openBottle(desk, { productId: shop.coating, lotId: lotId! })
    // Sixty days after the 15th of April.
    expect(lots).toMatchObject([{ state: 'open', openedOn: '2026-04-15', lastOn: '2026-06-14' }])
    expect(words).toEqual(['opened no. 1 of Ovrel Two'])
    await expect(openBottle(desk, { productId: shop.coating, lotId: lotId! })).rejects.toMatchObject({
      code: 'already-open',
    })
    desk.setNow('2026-06-15T12:00:00Z')
    await expect(
      takeStock(desk, { productId: shop.coating, lotId: lotId!, amount: 5, reason: 'walk-in' }),
    ).rejects.toMatchObject({ code: 'past-date' })
    const thrown = await wasteStock(desk, {
      productId: shop.coating,
      lotId: lotId!,
      amount: 50,
      discard: 'expired',
      reason: '',
    })
    expect(thrown).toMatchObject({ onHand: 0, lots: [] })
  })

  it('counted as the ledger has it makes no move; counted otherwise, one with its reason', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const count = (counted: number, reason = 'weekly count') =>
      countBottle(desk, { productId: shop.coating, lotId: lotId!, counted, reason })
    await count(50)
    expect(await moves()).toBe(1)
    expect((await count(41.25)).words).toEqual(['no. 1 of Ovrel Two counted: 41.25 ml, the ledger had 50 ml'])
    expect(await moves()).toBe(2)
    await expect(count(-1)).rejects.toMatchObject({ field: 'counted' })
    await expect(count(Number.NaN)).rejects.toMatchObject({ field: 'counted' })
    await expect(count(30, '  ')).rejects.toMatchObject({ field: 'reason' })
    // 62 g empty, 1.05 g/ml: 93.5 g hold 30 ml.
    const byWeight = await countBottle(desk, {
      productId: shop.coating,
      lotId: lotId!,
      weighed: { grossG: 93.5 },
      reason: 'weighed',
    })
    expect(byWeight.onHand).toBe(30)
  })

  it('gives no more than it holds, whatever it is taken for', async () => {
    const [lotId] = await stock(desk, shop.coating, shop.sizes.coating, 1)
    const waste: typeof takeStock = (of, input) => wasteStock(of, { ...input, discard: 'other' })
    for (const take of [takeStock, waste, returnStock]) {
      const input = { productId: shop.coating, lotId: lotId!, reason: 'tried' }
      await expect(take(desk, { ...input, amount: 50.01 })).rejects.toMatchObject({
        code: 'beyond-stock',
        field: 'amount',
      })
      await expect(take(desk, { ...input, amount: 0 })).rejects.toMatchObject({ field: 'amount' })
      await expect(take(desk, { ...input, amount: 1, reason: '' })).rejects.toMatchObject({ field: 'reason' })
      await expect(take(desk, { ...input, lotId: 'none', amount: 1 })).rejects.toMatchObject({
        code: 'missing',
      })
    }
    expect(await moves()).toBe(1)
  })
})

describe('what the shelf is told of a product', () => {
  const fields = {
    unit: 'piece' as const,
    densityGPerMl: null,
    lifeAfterOpeningDays: null,
    lifeUnlimited: false,
    storageLeastC: null,
    storageMostC: null,
    place: '',
    serviceClass: 'usual' as const,
    holdsUpBookings: true,
  }

  it('cannot change its unit once something was counted', async () => {
    await expect(saveShelfProduct(desk, { productId: shop.topper, ...fields, version: 1 })).resolves.toEqual({
      version: 2,
    })
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await expect(
      saveShelfProduct(desk, { productId: shop.coating, ...fields, version: 1 }),
    ).rejects.toMatchObject({
      field: 'unit',
      message: expect.stringContaining('counted by volume'),
    })
  })

  it.each([
    [{ densityGPerMl: 40 }, 'densityGPerMl'],
    [{ storageLeastC: 25, storageMostC: 5 }, 'storage'],
    [{ lifeUnlimited: true, lifeAfterOpeningDays: 30 }, 'lifeUnlimited'],
  ])('refuses %o by its field', async (change, field) => {
    await expect(
      saveShelfProduct(desk, { productId: shop.topper, ...fields, ...change, version: 1 }),
    ).rejects.toMatchObject({ field })
  })

  it('refuses a size that measures nothing like its label', async () => {
    const size = { productId: shop.topper, label: '1 L', labelAmount: 1_000, tareG: null }
    await expect(saveSize(desk, { ...size, measuredAmount: 10 })).rejects.toMatchObject({
      field: 'measuredAmount',
    })
    await expect(saveSize(desk, { ...size, measuredAmount: null, tareG: -4 })).rejects.toMatchObject({
      field: 'tareG',
    })
  })
})

describe('suppliers and rules', () => {
  it('are refused by field, and archived only with nothing under way', async () => {
    const [{ learnedLead: _, offers: __, openOrders: ___, archivedAt: ____, ...supplier }] =
      (await listSuppliers(desk)) as [Awaited<ReturnType<typeof listSuppliers>>[number]]
    for (const [change, field] of [
      [{ weekdays: [] }, 'weekdays'],
      [{ leadMeanDays: 0 }, 'lead.meanDays'],
      [{ email: 'nobody' }, 'email'],
      [{ name: ' ' }, 'name'],
    ] as const)
      await expect(
        saveSupplier(desk, {
          ...supplier,
          ...change,
          weekdays: [...('weekdays' in change ? change.weekdays : supplier.weekdays)],
        }),
      ).rejects.toMatchObject({ field })
    await archiveSupplier(desk, { id: supplier.id, version: supplier.version, accepted: true })
    expect(await listSuppliers(desk)).toEqual([])
    expect(await desk.store.read.supplierOffer.count({ where: { archivedAt: null } })).toBe(0)
  })

  it('begin with usual service levels, follow the shop’s country, and take one edit at a time', async () => {
    const { regimeUsed, ...rules } = await getRules(desk)
    expect([regimeUsed, rules.services, rules.version]).toEqual([
      'us-osha',
      { vital: 0.99, usual: 0.95, handy: 0.9 },
      0,
    ])
    const saved = await saveRules(desk, { ...rules, regime: 'eu-clp' })
    expect([saved.regimeUsed, saved.version]).toEqual(['eu-clp', 1])
    await expect(saveRules(desk, rules)).rejects.toMatchObject({ code: 'stale' })
    await expect(
      saveRules(desk, { ...rules, services: { ...rules.services, vital: 1 } }),
    ).rejects.toMatchObject({
      field: 'services.vital',
    })
  })
})
