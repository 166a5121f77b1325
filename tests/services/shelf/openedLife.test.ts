import { beforeEach, expect, it } from 'vitest'
import { keepLife, shortenLife } from '../../../main/services/shelf/openedLife.ts'
import { shelfProduct } from '../../../main/services/shelf/productPage.ts'
import { openBottle, wasteStock } from '../../../main/services/shelf/stockChanges.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import type { Tx } from '../../../main/store/store.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const proposal = async () => (await shelfProduct(desk, { id: shop.coating })).lifeProposal
const version = async () => (await shelfProduct(desk, { id: shop.coating })).version

/** Four bottles opened on 15 April; three are found skinned over on 5 May, 20 days on. */
async function threeWentOff(): Promise<string> {
  const lots = await stock(desk, shop.coating, shop.sizes.coating, 4)
  for (const lotId of lots) await openBottle(desk, { productId: shop.coating, lotId })
  desk.setNow('2026-05-05T11:00:00Z')
  for (const lotId of lots.slice(0, 3))
    await wasteStock(desk, { productId: shop.coating, lotId, amount: 50, discard: 'skinned', reason: '' })
  return lots[3]!
}

it('is proposed shorter where bottles went off before their date, and changes by nobody but a person', async () => {
  const left = await threeWentOff()
  expect(await proposal()).toMatchObject({
    days: 19,
    openNow: 1,
    words: expect.stringContaining('3 of the last 4 opened bottles went off within their 60 days'),
  })
  expect(await desk.store.read.shelfProduct.findUnique({ where: { productId: shop.coating } })).toMatchObject(
    {
      lifeAfterOpeningDays: 60,
    },
  )
  const seen = { productId: shop.coating, version: await version() }
  await expect(shortenLife(desk, { ...seen, days: 10 })).rejects.toMatchObject({ code: 'stale' })
  await shortenLife(desk, { ...seen, days: 19 })
  await expect(shortenLife(desk, { ...seen, days: 19 })).rejects.toMatchObject({ code: 'stale' })
  expect(await shelfProduct(desk, { id: shop.coating })).toMatchObject({
    lifeProposal: null,
    shelf: { lifeAfterOpeningDays: 19 },
    lots: [{ id: left, lastOn: '2026-05-04', state: 'expired' }],
  })
  const line = await desk.store.read.auditLine.findFirstOrThrow({ orderBy: { id: 'desc' } })
  expect(line).toMatchObject({ act: 'changed', entity: 'stock', detail: { openBottles: 1 } })
})

it('is left alone by what was spilt, thrown away on its printed date, or taken back', async () => {
  await threeWentOff()
  const move = await desk.store.read.stockMove.findFirstOrThrow({ where: { discard: 'skinned' } })
  await takeBackMove(desk, { seq: move.seq, reason: 'it was the other one' })
  expect(await proposal()).toBeNull()
  const { lotId, productId } = move
  await wasteStock(desk, { productId, lotId, amount: 50, discard: 'spilt', reason: '' })
  expect(await proposal()).toBeNull()
})

it('keeps what was the matter, whoever writes to the ledger', async () => {
  await threeWentOff()
  const change = (tx: Tx) => tx.$executeRaw`update StockMove set discard = 'spilt'`
  await expect(desk.store.transact({ who: 'somebody', at: desk.now() }, change)).rejects.toThrow(
    'a move of the ledger is never changed',
  )
})

it('is kept where somebody says so, and asked about again once more bottles go off', async () => {
  const left = await threeWentOff()
  const seen = { productId: shop.coating, version: await version() }
  await keepLife(desk, seen)
  expect(await proposal()).toBeNull()
  await expect(keepLife(desk, seen)).rejects.toMatchObject({ code: 'stale' })
  expect((await shelfProduct(desk, { id: shop.coating })).shelf?.lifeAfterOpeningDays).toBe(60)
  desk.setNow('2026-05-06T11:00:00Z')
  await wasteStock(desk, { productId: shop.coating, lotId: left, amount: 50, discard: 'cloudy', reason: '' })
  expect(await proposal()).not.toBeNull()
})
