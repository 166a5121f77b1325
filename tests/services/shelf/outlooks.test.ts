import { expect, it } from 'vitest'
import { saveException } from '../../../main/services/setUp/hours.ts'
import { shelfAhead } from '../../../main/services/shelf/ahead.ts'
import { takeStock } from '../../../main/services/shelf/stockChanges.ts'
import { saveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { takeBackMove } from '../../../main/services/shelf/takeBack.ts'
import { makeDesk } from '../makeDesk.ts'
import { shelfShop, stock } from './shelfShop.ts'

it('keeps what it learned of a product until its ledger, its day or its supplier is another', async () => {
  const desk = await makeDesk('2026-04-15T11:00:00Z')
  const shop = await shelfShop(desk)
  await stock(desk, shop.topper, shop.sizes.topper, 2)
  const known = async () => {
    const { products } = await shelfAhead(desk, desk.store.read)
    // Inside an act nothing is kept, so this is worked out anew.
    const anew = await desk.store.transact({ who: 'test', at: 0 }, tx => shelfAhead(desk, tx))
    const outlooks = [...products].map(([id, { outlook }]) => [id, outlook] as const)
    expect(outlooks).toEqual([...anew.products].map(([id, { outlook }]) => [id, outlook]))
    return new Map(outlooks)
  }
  let before = await known()
  const changes = async (what: string, change: () => Promise<unknown>, changed: readonly string[]) => {
    await change()
    const now = await known()
    const others = [...now].filter(([id, outlook]) => outlook !== before.get(id)).map(([id]) => id)
    expect(others.sort(), what).toEqual([...changed].sort())
    before = now
  }
  const all = [...before.keys()]
  await changes('nothing', async () => {}, [])
  const lot = await desk.store.read.lot.findFirstOrThrow({ where: { productId: shop.topper } })
  await changes(
    'a use',
    () => takeStock(desk, { productId: shop.topper, lotId: lot.id, amount: 40, reason: 'walk-in' }),
    [shop.topper],
  )
  const { seq } = await desk.store.read.stockMove.findFirstOrThrow({ where: { kind: 'use' } })
  await changes('the use taken back', () => takeBackMove(desk, { seq, reason: 'wrong bottle' }), [
    shop.topper,
  ])
  const offer = await desk.store.read.supplierOffer.findUniqueOrThrow({ where: { id: shop.offers.topper } })
  await changes(
    'a larger pack',
    () =>
      saveOffer(desk, {
        id: offer.id,
        version: offer.version,
        supplierId: shop.supplier,
        productId: shop.topper,
        sizeId: shop.sizes.topper,
        article: 'C-2',
        containersPerPack: 6,
        breaks: [{ fromPacks: 1, packPriceMinor: 12_000 }],
        shelfLifeDays: 540,
        preferred: true,
      }),
    [shop.topper],
  )
  await changes('a closed day', () => saveException(desk, { date: '2026-04-20', hours: [], note: '' }), all)
  await changes('the next day', async () => desk.setNow('2026-04-16T11:00:00Z'), all)
})
