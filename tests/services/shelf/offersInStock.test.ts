import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import type { OfferView } from '../../../main/services/booking/views.ts'
import { proposeDrafts } from '../../../main/services/shelf/orders/propose.ts'
import { sendOrder } from '../../../main/services/shelf/orders/send.ts'
import { archiveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  // Wednesday morning.
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})
afterEach(() => desk.close())

const ask = (askedDate?: string) =>
  offers(desk, {
    sizeClass: 'medium',
    condition: 'good',
    treatmentIds: [shop.treatments.twoLayers],
    askedDate,
  })
const coatDay = (offer: OfferView) => {
  const blocks = offer.stays.flatMap(stay => stay.blocks)
  return dateOf(
    blocks.find(block => block.stage === 'coat' && block.kind === 'work')!.fromAt,
    'America/New_York',
  )
}
const feasible = (offer: { feasible: boolean }) => offer as OfferView

describe('an offer', () => {
  it('says nothing of the shelf while it holds what the job draws', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const { soonest } = await ask()
    expect(feasible(soonest).shelf).toEqual({ short: [], proposal: null, moved: null })
  })

  it('moves to when the chemicals could be there, and says what held it up', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    const before = feasible((await ask()).soonest)
    await book(desk, shop, 0)
    await book(desk, shop, 1)
    const { soonest, leastBlocked, askedDay } = await ask()
    // 100 ml less two jobs of 50: nothing is left, and nothing ordered today is here before Monday.
    for (const offer of [soonest, leastBlocked, askedDay].map(feasible)) {
      expect(coatDay(offer) > '2026-04-20').toBe(true)
      expect(offer.shelf.moved).toContain('50 ml of the 50 ml of Ovrel Two will not be there')
      expect(offer.reasons[0]).toBe(offer.shelf.moved)
      // Moved so far that goods ordered today are there: that order is what it rests on.
      expect(offer.shelf.proposal).toMatchObject([
        { offerId: shop.offers.coating, packs: 1, supplierName: 'Carrow Supply' },
      ])
      expect(offer.reasons).toContain('Order 1 pack (50 ml) of Ovrel Two from Carrow Supply.')
    }
    expect(feasible(soonest).handoverAt).toBeGreaterThan(before.handoverAt)
  })

  it('far enough ahead is not moved: what must be ordered for it is proposed', async () => {
    const { askedDay } = await ask('2026-05-06')
    const offer = feasible(askedDay)
    expect(offer.shelf.moved).toBeNull()
    expect(offer.shelf.short).toMatchObject([
      {
        productName: 'Ovrel Two',
        need: 50,
        have: 0,
        words: expect.stringContaining('must be ordered today to be there'),
      },
    ])
    expect(offer.shelf.proposal).toMatchObject([{ packs: 1 }])
    // The proposal becomes a draft as it stands.
    const drafts = await proposeDrafts(desk, {
      lines: offer.shelf.proposal!.map(({ offerId, packs, words }) => ({ offerId, packs, why: [words] })),
    })
    expect(drafts).toMatchObject([{ supplierName: 'Carrow Supply', goodsMinor: 4_800 }])
  })

  it('counts on what is under way from the day it is surely here', async () => {
    const [draft] = await proposeDrafts(desk, { lines: [{ offerId: shop.offers.coating, packs: 1 }] })
    await sendOrder(desk, { id: draft!.id, version: draft!.version, how: 'paper' })
    const offer = feasible((await ask()).soonest)
    const { lateFromOn } = await desk.store.read.purchaseOrder.findFirstOrThrow()
    expect(coatDay(offer) > lateFromOn!).toBe(true)
    expect(offer.shelf.proposal).toBeNull()
    expect(offer.shelf.short).toEqual([])
  })

  it('stands and says so where nobody sells what is missing', async () => {
    await archiveOffer(desk, { id: shop.offers.coating, version: 1 })
    const offer = feasible((await ask()).soonest)
    expect(offer.shelf).toMatchObject({
      moved: null,
      proposal: [],
      short: [{ couldBeThere: null, words: expect.stringContaining('no supplier is entered for it') }],
    })
    expect(coatDay(offer)).toBe('2026-04-15')
  })

  it('does not take from a job booked before it, but leaves later ones to be ordered for', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await book(desk, shop, 0)
    const { askedDay } = await ask()
    expect(feasible(askedDay).shelf.moved).not.toBeNull()
    const later = feasible((await ask('2026-05-20')).askedDay)
    expect(later.shelf.short).toMatchObject([{ have: 0 }])
  })
})
