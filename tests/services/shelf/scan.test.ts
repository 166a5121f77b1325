import { beforeEach, describe, expect, it } from 'vitest'
import { forgetCode, learnCode, scan } from '../../../main/services/shelf/scan.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

// For use within one shop (prefix 200), so nobody's product: 18 + 3 × 23 = 87, and 3 is missing to 90 (GS1 General
// Specifications, sections 1.4 and 7.9; from memory).
const good = '2006381333933'
const misread = '2006381333932'

describe('a scanned code', () => {
  it('is asked about once, then known, whichever length it is read in', async () => {
    expect(await scan(desk, { code: good })).toMatchObject({ kind: 'unknown', code: `0${good}` })
    await learnCode(desk, { code: good, productId: shop.coating, sizeId: shop.sizes.coating })
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    for (const code of [good, `0${good}`, ` ${good}\n`])
      expect(await scan(desk, { code })).toMatchObject({
        kind: 'known',
        productName: 'Ovrel Two',
        sizeLabel: '50 ml',
        lots: [{ number: 1, onHand: 50 }],
      })
  })

  it('with a misread digit is told from one that is only unknown, and is never learned', async () => {
    const found = await scan(desk, { code: misread })
    expect(found).toMatchObject({ kind: 'badCheckDigit', words: expect.stringContaining('should be 3') })
    await expect(learnCode(desk, { code: misread, productId: shop.coating })).rejects.toMatchObject({
      code: 'gtin-check-digit',
    })
  })

  it('brings expiry and batch along where it holds them (GS1: 01, 17, 10; from memory)', async () => {
    await learnCode(desk, { code: good, productId: shop.coating })
    expect(await scan(desk, { code: `]d2010${good}17270331\u001d10B-77` })).toMatchObject({
      kind: 'known',
      expiresOn: '2027-03-31',
      batch: 'B-77',
    })
  })

  it('of the shop’s own label, or a bottle’s number, is that bottle, an empty one too', async () => {
    const [first, second] = await stock(desk, shop.coating, shop.sizes.coating, 2)
    expect(await scan(desk, { code: `http://127.0.0.1:4410/shelf/lot/${second}` })).toMatchObject({
      kind: 'bottle',
      lot: { id: second, number: 2, next: false },
    })
    expect(await scan(desk, { code: 'no. 1' })).toMatchObject({
      kind: 'bottle',
      lot: { id: first, next: true },
    })
    expect(await scan(desk, { code: '99' })).toMatchObject({ kind: 'unknown' })
  })

  it('stands for one product at a time', async () => {
    await learnCode(desk, { code: good, productId: shop.coating })
    await expect(learnCode(desk, { code: good, productId: shop.topper })).rejects.toMatchObject({
      code: 'code-known',
      message: expect.stringContaining('Ovrel Two'),
    })
    await forgetCode(desk, { code: `0${good}` })
    expect(await learnCode(desk, { code: good, productId: shop.topper })).toMatchObject({
      productName: 'Ovrel Veil',
    })
    await expect(
      learnCode(desk, { code: 'HOUSE-7', productId: shop.topper, sizeId: shop.sizes.coating }),
    ).rejects.toMatchObject({
      field: 'sizeId',
    })
    expect(await learnCode(desk, { code: 'HOUSE-7', productId: shop.topper })).toMatchObject({
      kind: 'known',
      code: 'HOUSE-7',
    })
  })
})
