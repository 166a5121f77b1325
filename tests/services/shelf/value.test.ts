import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { Refusal } from '../../../main/domain/refusal.ts'
import { confirmDraws } from '../../../main/services/shelf/confirmDraws.ts'
import { ledgerPage } from '../../../main/services/shelf/productPage.ts'
import { saveSize } from '../../../main/services/shelf/shelfProducts.ts'
import { countBottle, returnStock, takeStock, wasteStock } from '../../../main/services/shelf/stockChanges.ts'
import { saveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { jobCost, shelfValue } from '../../../main/services/shelf/value.ts'
import { lotRows } from '../../../main/store/lotRows.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

describe('the value of the shelf', () => {
  it('by weighted average and by first in, first out (worked by hand)', async () => {
    // 500 ml for 20.00, then 500 ml for 30.00: 5 minor units a ml on average.
    const [first] = await stock(desk, shop.topper, shop.sizes.topper, 1, {
      costMinor: 2_000,
      expiresOn: '2026-12-01',
    })
    await stock(desk, shop.topper, shop.sizes.topper, 1, { costMinor: 3_000, expiresOn: '2027-12-01' })
    await takeStock(desk, { productId: shop.topper, lotId: first!, amount: 100, reason: 'walk-in' })
    await wasteStock(desk, {
      productId: shop.topper,
      lotId: first!,
      amount: 50,
      discard: 'spilt',
      reason: '',
    })
    const value = await shelfValue(desk)
    const topper = value.products.find(each => each.productId === shop.topper)!
    expect(topper).toMatchObject({ onHand: 850, averageMinor: 4_250, per100Minor: 500 })
    // First in, first out: 100 and 50 ml at 4 a ml come off the first bottle.
    expect(topper.fifoMinor).toBe(5_000 - 600)
    expect(value.writeOffs).toMatchObject([{ amount: 50, why: 'spilt', averageMinor: 250, fifoMinor: 200 }])
    expect([value.writeOffAverageMinor, value.writeOffFifoMinor]).toEqual([250, 200])
  })

  it('knows what each job cost in chemicals', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2, { costMinor: 9_600 })
    const booked = await book(desk, shop)
    const { position } = (await desk.store.read.stepDraw.findMany({ where: { jobId: booked.jobId } }))[0]!
    const done = await workUntil(desk, booked, position)
    await confirmDraws(desk, {
      ...done,
      position,
      draws: [{ productId: shop.coating, lotId: null, amount: 30, how: 'proposed' }],
    })
    // 96.00 for 100 ml: 30 ml are 28.80.
    expect(await jobCost(desk, { jobId: booked.jobId })).toMatchObject({
      plate: 'KFR 204',
      averageMinor: 2_880,
      fifoMinor: 2_880,
      lines: [{ productName: 'Ovrel Two', amount: 30 }],
    })
  })

  it('compares sizes by what they measure', async () => {
    const { id: sizeId } = await saveSize(desk, {
      productId: shop.topper,
      label: '16 fl oz',
      labelAmount: 473.18,
      // Sold as 500 ml and found to hold so much.
      measuredAmount: 500,
      tareG: null,
    })
    await saveOffer(desk, {
      supplierId: shop.supplier,
      productId: shop.topper,
      sizeId,
      article: '',
      containersPerPack: 12,
      breaks: [{ fromPacks: 1, packPriceMinor: 24_000 }],
      shelfLifeDays: null,
      preferred: false,
    })
    const { products } = await shelfValue(desk)
    const { sizes } = products.find(each => each.productId === shop.topper)!
    // 240.00 for 6,000 ml is 4.00 for 100; 26.00 for 500 ml is 5.20.
    expect(sizes.map(each => [each.sizeLabel, each.per100Minor])).toEqual([
      ['16 fl oz', 400],
      ['500 ml', 520],
    ])
    expect(sizes[0]!.words).toContain('measures')
    expect(sizes[1]!.words).toContain('30 % dearer')
  })

  it('is never more than was paid, and the ledger adds up, whatever was done', async () => {
    const act = fc.record({
      kind: fc.constantFrom('receive', 'use', 'waste', 'return', 'count', 'takeBack'),
      which: fc.nat(40),
      amount: fc.integer({ min: 1, max: 60_000 }).map(centi => centi / 100),
      costMinor: fc.nat(9_999),
    })
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 12 }), async acts => {
        for (const { kind, which, amount, costMinor } of acts) {
          const lots = await lotRows(desk.store.read, [shop.topper])
          const lotId = lots[which % Math.max(1, lots.length)]?.id
          const input = { productId: shop.topper, lotId: lotId ?? '', amount, reason: 'tried' }
          try {
            if (kind === 'receive' || !lotId)
              await stock(desk, shop.topper, shop.sizes.topper, 1 + (which % 3), { costMinor })
            else if (kind === 'use') await takeStock(desk, input)
            else if (kind === 'waste') await wasteStock(desk, { ...input, discard: 'other' })
            else if (kind === 'return') await returnStock(desk, input)
            else if (kind === 'count') await countBottle(desk, { ...input, counted: amount })
            else await takeBackMove(desk, { seq: which + 1, reason: 'slip' })
          } catch (error) {
            // What the ledger refuses changes nothing, and so breaks no law.
            if (!(error instanceof Refusal)) throw error
          }
        }
        const moves = await desk.store.read.stockMove.findMany()
        const rows = await lotRows(desk.store.read, [shop.topper])
        const byLot = new Map<string, number>()
        for (const move of moves) {
          byLot.set(move.lotId, (byLot.get(move.lotId) ?? 0) + move.centi)
          expect(byLot.get(move.lotId)).toBeGreaterThanOrEqual(0)
        }
        for (const row of rows) expect(row.centi).toBe(byLot.get(row.id))
        const value = (await shelfValue(desk)).products.find(each => each.productId === shop.topper)!
        expect(value.onHand * 100).toBeCloseTo(
          [...byLot.values()].reduce((sum, centi) => sum + centi, 0),
          6,
        )
        const paid = moves.reduce((sum, move) => sum + (move.costMinor ?? 0), 0)
        for (const minor of [value.averageMinor, value.fifoMinor]) {
          expect(Number.isInteger(minor)).toBe(true)
          expect(minor).toBeGreaterThanOrEqual(0)
          expect(minor).toBeLessThanOrEqual(paid)
        }
      }),
      { numRuns: 12, seed: 4 },
    )
  })
})

describe('the ledger', () => {
  it('is read page by page, newest first, and no line is lost between pages', async () => {
    const [lotId] = await stock(desk, shop.topper, shop.sizes.topper, 1)
    for (let i = 1; i <= 120; i++)
      await takeStock(desk, { productId: shop.topper, lotId: lotId!, amount: i / 100, reason: `no. ${i}` })
    const seen: number[] = []
    let before: number | null = null
    do {
      const page: Awaited<ReturnType<typeof ledgerPage>> = await ledgerPage(desk, {
        productId: shop.topper,
        before,
      })
      seen.push(...page.moves.map(move => move.seq))
      before = page.before
    } while (before !== null)
    expect(seen).toEqual(Array.from({ length: 121 }, (_, i) => 121 - i))
  })

  it('cannot be edited or emptied, not even past the program', async () => {
    await stock(desk, shop.topper, shop.sizes.topper, 1)
    const write = (sql: string) =>
      desk.store.transact({ who: 'nobody', at: 0 }, tx => tx.$executeRawUnsafe(sql))
    await expect(write('update StockMove set centi = 1')).rejects.toThrow(/never changed/)
    await expect(write('delete from StockMove')).rejects.toThrow(/never deleted/)
    await expect(
      write(
        `insert into StockMove (lotId, productId, kind, centi, at, by) select id, productId, 'use', -99999999, 0, 'x' from Lot`,
      ),
    ).rejects.toThrow(/less than nothing/)
    expect(await desk.store.read.stockMove.count()).toBe(1)
  })
})
