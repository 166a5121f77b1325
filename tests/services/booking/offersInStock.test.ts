import { beforeEach, describe, expect, it } from 'vitest'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { type OfferView, offers } from '../../../main/services/booking/offers.ts'
import { proposeDrafts } from '../../../main/services/shelf/orders/propose.ts'
import { sendOrder } from '../../../main/services/shelf/orders/send.ts'
import { archiveOffer } from '../../../main/services/shelf/supplierOffers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, recipe, type ShelfShop, shelfShop, stock } from '../shelf/shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  // Wednesday morning.
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

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
    expect(feasible(soonest).shelf).toEqual({ short: [], words: null, proposal: [] })
    expect(feasible(soonest).ifHere).toBeNull()
  })

  it('waits for what holds it up, and beside it stands the place that holds if the goods are here in time', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 2)
    await book(desk, shop, 0)
    await book(desk, shop, 1)
    const found = await ask()
    const unstocked = await desk.store
      .transact({ who: 'test', at: desk.now() }, async tx => {
        await tx.shelfProduct.updateMany({ data: { holdsUpBookings: false } })
      })
      .then(() => ask())
    for (const kind of ['soonest', 'leastBlocked', 'askedDay'] as const) {
      const offer = feasible(found[kind])
      // 100 ml less two jobs of 50: nothing is left, and nothing ordered today is here before Monday.
      expect(coatDay(offer) > '2026-04-20').toBe(true)
      // Moved so far that goods ordered today are there: that order is what it rests on.
      expect(offer.shelf.words).toMatch(/^Needs 50 ml of Ovrel Two by \w+.*: put on today’s order\.$/)
      expect(offer.shelf.proposal).toMatchObject([
        { offerId: shop.offers.coating, packs: 1, supplierName: 'Carrow Supply' },
      ])
      // The other is exactly where bays and crew would have it without the shelf.
      const { words, offer: sooner } = offer.ifHere!
      expect(words).toMatch(/^If 50 ml of Ovrel Two is here by (today|tomorrow|\w+day)$/)
      expect(sooner.plan).toEqual(feasible(unstocked[kind]).plan)
      expect(sooner.handoverAt).toBeLessThan(offer.handoverAt)
      expect(sooner.shelf.short).toMatchObject([
        { productId: shop.coating, need: 50, have: 0, holdsUp: true },
      ])
      expect(sooner.shelf.words).toContain('ordered today, it could be there')
    }
  })

  it('is never moved by goods that hold nothing up: they go onto an order', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 5)
    const before = feasible((await ask()).soonest)
    await recipe(desk, shop.treatments.twoLayers, 0, shop.cloths, 4, 1)
    const { soonest, leastBlocked, askedDay } = await ask()
    expect(feasible(soonest).plan).toEqual(before.plan)
    for (const offer of [soonest, leastBlocked, askedDay].map(feasible)) {
      expect(offer.ifHere).toBeNull()
      expect(offer.shelf.short).toMatchObject([{ productName: 'Lint-free cloths', holdsUp: false }])
      expect(offer.shelf.words).toMatch(
        /^Needs 4 pieces of Lint-free cloths by .*; no supplier is entered for Lint-free cloths\.$/,
      )
    }
  })

  it('far enough ahead is not moved: what must be ordered for it is proposed', async () => {
    const { askedDay } = await ask('2026-05-06')
    const offer = feasible(askedDay)
    expect(offer.ifHere).toBeNull()
    expect(offer.shelf.short).toMatchObject([{ productName: 'Ovrel Two', need: 50, have: 0 }])
    expect(offer.shelf.words).toBe('Needs 50 ml of Ovrel Two by Wednesday 6 May: put on today’s order.')
    expect(offer.shelf.proposal).toMatchObject([{ packs: 1 }])
    // The proposal becomes a draft as it stands.
    const drafts = await proposeDrafts(desk, {
      lines: offer.shelf.proposal.map(({ offerId, packs, words }) => ({ offerId, packs, why: [words] })),
    })
    expect(drafts).toMatchObject([{ supplierName: 'Carrow Supply', goodsMinor: 4_800 }])
  })

  it('counts on what is under way from the day it is surely here', async () => {
    const [draft] = await proposeDrafts(desk, { lines: [{ offerId: shop.offers.coating, packs: 1 }] })
    await sendOrder(desk, { id: draft!.id, version: draft!.version, how: 'paper' })
    const offer = feasible((await ask()).soonest)
    const { lateFromOn } = await desk.store.read.purchaseOrder.findFirstOrThrow()
    expect(coatDay(offer) > lateFromOn!).toBe(true)
    expect(offer.shelf).toEqual({ short: [], words: null, proposal: [] })
  })

  it('stands and says so where nobody sells what is missing', async () => {
    await archiveOffer(desk, { id: shop.offers.coating, version: 1, accepted: true })
    const offer = feasible((await ask()).soonest)
    expect(offer.shelf).toMatchObject({
      proposal: [],
      short: [{ couldBeThere: null }],
      words: 'Needs 50 ml of Ovrel Two by today; no supplier is entered for Ovrel Two.',
    })
    expect(coatDay(offer)).toBe('2026-04-15')
  })

  it('does not take from a job booked before it, but leaves later ones to be ordered for', async () => {
    await stock(desk, shop.coating, shop.sizes.coating, 1)
    await book(desk, shop, 0)
    const { askedDay } = await ask()
    expect(feasible(askedDay).ifHere).not.toBeNull()
    const later = feasible((await ask('2026-05-20')).askedDay)
    expect(later.shelf.short).toMatchObject([{ have: 0 }])
  })
})
