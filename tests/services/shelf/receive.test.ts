import { beforeEach, describe, expect, it } from 'vitest'
import { receiveGoods } from '../../../main/services/shelf/receive.ts'
import { saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const line = (change: object = {}) => ({
  productId: shop.coating,
  sizeId: shop.sizes.coating,
  containers: 2,
  expiresOn: null,
  batch: null,
  costMinor: 6_000,
  ...change,
})
const topper = (change: object = {}) =>
  line({ productId: shop.topper, sizeId: shop.sizes.topper, containers: 1, costMinor: 3_000, ...change })

describe('goods that come in', () => {
  it('become a bottle each, numbered on, with their share of cost and of the carriage', async () => {
    await stock(desk, shop.cloths, shop.sizes.cloths, 1)
    const { lots, words } = await receiveGoods(desk, {
      supplierId: shop.supplier,
      carriageMinor: 900,
      lines: [line({ batch: '  B-7 ', expiresOn: '2027-03-01' }), topper()],
    })
    expect(lots.map(({ number, productId, sizeLabel }) => [number, productId, sizeLabel])).toEqual([
      [2, shop.coating, '50 ml'],
      [3, shop.coating, '50 ml'],
      [4, shop.topper, '500 ml'],
    ])
    expect(words).toEqual([
      '2 × 50 ml of Ovrel Two received, 100 ml in all',
      '1 × 500 ml of Ovrel Veil received, 500 ml in all',
    ])
    const rows = await desk.store.read.lot.findMany({
      where: { number: { gt: 1 } },
      orderBy: { number: 'asc' },
    })
    expect(rows.map(row => [row.batch, row.expiresOn, row.receivedOn, row.supplierId, row.openedOn])).toEqual(
      [
        ['B-7', '2027-03-01', '2026-04-15', shop.supplier, null],
        ['B-7', '2027-03-01', '2026-04-15', shop.supplier, null],
        [null, null, '2026-04-15', shop.supplier, null],
      ],
    )
    // The carriage of 9.00 by value, 60 to 30: 6.00 and 3.00; two bottles share 66.00.
    const moves = await desk.store.read.stockMove.findMany({ orderBy: { seq: 'asc' }, skip: 1 })
    expect(moves.map(({ kind, centi, costMinor, lotId }) => [kind, centi, costMinor, lotId])).toEqual([
      ['receipt', 5_000, 3_300, lots[0]?.id],
      ['receipt', 5_000, 3_300, lots[1]?.id],
      ['receipt', 50_000, 3_300, lots[2]?.id],
    ])
  })

  it('count as what the container measures, where somebody has measured one', async () => {
    const { id } = await saveSize(desk, {
      productId: shop.topper,
      label: '16 fl oz',
      labelAmount: 473.18,
      measuredAmount: 500,
      tareG: null,
    })
    await receiveGoods(desk, { lines: [topper({ sizeId: id, containers: 2 })] })
    const { _sum } = await desk.store.read.stockMove.aggregate({ _sum: { centi: true } })
    expect(_sum.centi).toBe(100_000)
  })

  it('are refused by field, and then nothing of the delivery stands on the shelf', async () => {
    const refused = async (lines: ReturnType<typeof line>[], more: object, field: string) =>
      expect(receiveGoods(desk, { lines, ...more })).rejects.toMatchObject({ field })
    await refused([topper(), line({ sizeId: shop.sizes.topper })], {}, 'lines.1.sizeId')
    await refused([topper(), line({ costMinor: -1 })], {}, 'lines.1.costMinor')
    await refused([topper(), line({ containers: 0 })], {}, 'lines.1.containers')
    await refused([topper(), line({ expiresOn: '2026-04-14' })], {}, 'lines.1.expiresOn')
    await refused([topper(), line({ productId: 'none' })], {}, 'productId')
    await refused([topper()], { carriageMinor: -1 }, 'carriageMinor')
    await refused([topper()], { supplierId: 'none' }, 'supplierId')
    await refused([], {}, 'lines')
    expect(await desk.store.read.lot.count()).toBe(0)
    expect(await desk.store.read.stockMove.count()).toBe(0)
  })
})
