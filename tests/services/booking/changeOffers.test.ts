/** A booking that changes asks the shelf as a new one does, and its own goods are not in its way. */
import { beforeEach, expect, test } from 'vitest'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { type OfferView, offers } from '../../../main/services/booking/offers.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, recipe, type ShelfShop, shelfShop, stock } from '../shelf/shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  // Wednesday morning.
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const twoLayers = () => ({ treatmentIds: [shop.treatments.twoLayers] })
const feasible = (offer: { feasible: boolean }) => offer as OfferView
const day = (at: number) => dateOf(at, 'America/New_York')

test('Other work that lacks goods waits for them, and the place that holds if they come in time stands beside it', async () => {
  const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
  const changed = await changeOffers(desk, { id, ...twoLayers() })
  for (const kind of ['soonest', 'leastBlocked', 'askedDay'] as const) {
    const offer = feasible(changed[kind])
    // Ordered on Wednesday, three working days and a spread: nothing is here before Monday the 20th.
    expect(day(offer.handoverAt) > '2026-04-20').toBe(true)
    expect(offer.shelf.words).toMatch(/^Needs 50 ml of Ovrel Two by .*: put on today’s order\.$/)
    expect(offer.ifHere?.words).toMatch(/^If 50 ml of Ovrel Two is here by/)
    expect(offer.ifHere!.offer.handoverAt).toBeLessThan(offer.handoverAt)
  }
  // As the first offers do for a new booking: the wash is in nobody's way.
  const asNew = await offers(desk, { sizeClass: 'medium', condition: 'good', ...twoLayers() })
  expect(feasible(changed.soonest).handoverAt).toBe(feasible(asNew.soonest).handoverAt)
})

test('What the booking was to draw itself does not lack for it on another day', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 1)
  const { jobId: id } = await book(desk, shop)
  const { askedDay, soonest } = await changeOffers(desk, { id, askedDate: '2026-04-17' })
  for (const offer of [askedDay, soonest].map(feasible))
    expect(offer).toMatchObject({ ifHere: null, shelf: { short: [], words: null } })
  // Another car finds the bottle given away.
  const other = await offers(desk, { sizeClass: 'medium', condition: 'good', ...twoLayers() })
  expect(feasible(other.soonest).ifHere).not.toBeNull()
})

test('Goods that hold nothing up move no booking; they only make a line of an order', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 5)
  const { jobId: id } = await book(desk, shop)
  const before = feasible((await changeOffers(desk, { id })).soonest)
  await recipe(desk, shop.treatments.twoLayers, 0, shop.cloths, 4, 1)
  const after = feasible((await changeOffers(desk, { id })).soonest)
  expect(after.plan).toEqual(before.plan)
  expect(after).toMatchObject({ ifHere: null, shelf: { short: [{ holdsUp: false }] } })
})
