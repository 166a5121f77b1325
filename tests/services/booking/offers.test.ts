import { beforeEach, expect, test } from 'vitest'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { bookPlace, confirmPlace, holdPlace, releasePlace } from '../../../main/services/booking/booking.ts'
import { heldPlaces } from '../../../main/services/booking/held.ts'
import type { OffersInput } from '../../../main/services/booking/inputs.ts'
import { type OffersView, type OfferView, offers } from '../../../main/services/booking/offers.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

// Wednesday 15 April 2026, 08:10 in New York.
beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:10:00Z')
  shop = await testShop(desk)
})

const zone = 'America/New_York'

function ask(change: Partial<OffersInput> = {}): Promise<OffersView> {
  return offers(desk, {
    sizeClass: 'medium',
    condition: 'good',
    treatmentIds: [shop.treatments.correction, shop.treatments.twoLayers],
    ...change,
  })
}

function three(view: OffersView): OfferView[] {
  return [view.soonest, view.leastBlocked, view.askedDay].map(offer => {
    if (!offer.feasible) throw new Error(offer.reasons.join(' '))
    return offer
  })
}

test('No offer comes before the day the car may be brought', async () => {
  const free = three(await ask())
  expect(free.some(offer => dateOf(offer.dropOffAt, zone) < '2026-04-21')).toBe(true)
  for (const offer of three(await ask({ notBefore: '2026-04-21' })))
    expect(dateOf(offer.dropOffAt, zone) >= '2026-04-21').toBe(true)
})

test('Offers bring the car home by the day wished for, or say that none can', async () => {
  const soonest = three(await ask())[0]!
  const day = dateOf(soonest.handoverAt, zone)
  const inTime = await ask({ homeBy: day })
  expect(inTime.tooLate).toBe(false)
  for (const offer of three(inTime)) expect(dateOf(offer.handoverAt, zone) <= day).toBe(true)
  // The wish may cost a later offer, never the soonest.
  expect(three(inTime)[0]!.handoverAt).toBe(soonest.handoverAt)

  const eve = Temporal.PlainDate.from(day).subtract({ days: 1 }).toString()
  const missed = await ask({ homeBy: eve })
  expect(missed.tooLate).toBe(true)
  expect(three(missed)[0]!.handoverAt).toBe(soonest.handoverAt)
})

test('A day that is over is refused by the name of its field', async () => {
  await expect(ask({ notBefore: '2026-04-14' })).rejects.toMatchObject({
    code: 'date-past',
    field: 'notBefore',
  })
  await expect(ask({ homeBy: '2026-04-14' })).rejects.toMatchObject({ code: 'date-past', field: 'homeBy' })
  await expect(ask({ homeBy: '2030-04-14' })).rejects.toMatchObject({ code: 'date-far', field: 'homeBy' })
})

async function place() {
  const { plan } = three(await ask())[0]!
  const treatmentIds = [shop.treatments.correction, shop.treatments.twoLayers]
  return { condition: 'good' as const, treatmentIds, plan }
}

test('A held place is found again until it is booked, let go or an hour past its end', async () => {
  const named = { colour: 'sand', make: 'Tervane', sizeClass: 'medium', finish: 'gloss', plate: '' } as const
  const customer = { name: 'Wren Calloway', phone: '212 555 0188' }
  const held = await holdPlace(desk, { ...(await place()), customer, vehicle: named })
  const { places } = await heldPlaces(desk)
  expect(places).toMatchObject([
    {
      jobId: held.jobId,
      version: held.version,
      carName: 'sand Tervane',
      customerName: 'Wren Calloway',
      heldUntilAt: desk.now() + 30,
      over: false,
    },
  ])
  desk.setNow('2026-04-15T12:40:00Z')
  expect((await heldPlaces(desk)).places).toMatchObject([{ over: true }])
  desk.setNow('2026-04-15T13:40:00Z')
  expect((await heldPlaces(desk)).places).toEqual([])
  desk.setNow('2026-04-15T12:20:00Z')
  await confirmPlace(desk, held)
  expect((await heldPlaces(desk)).places).toEqual([])

  const other = await holdPlace(desk, { ...(await place()), vehicleId: shop.vehicles[0]! })
  expect((await heldPlaces(desk)).places).toHaveLength(1)
  await releasePlace(desk, other)
  expect((await heldPlaces(desk)).places).toEqual([])
})

test('A place booked at once is a booking with its two lines of history, or nothing at all', async () => {
  const input = { ...(await place()), vehicleId: shop.vehicles[0]! }
  const booked = await bookPlace(desk, input)
  const job = await desk.store.read.job.findUniqueOrThrow({ where: { id: booked.jobId } })
  expect(job).toMatchObject({ status: 'booked', heldUntilAt: null, version: booked.version })
  const lines = await desk.store.read.auditLine.findMany({ where: { entityId: booked.jobId } })
  expect(lines.map(line => line.act).sort()).toEqual(['booked', 'held'])

  const count = await desk.store.read.customer.count()
  const taken = {
    ...input,
    customer: { name: 'Kay Underhill' },
    vehicle: { plate: 'KEY 1', sizeClass: 'medium', finish: 'gloss' },
  }
  const { vehicleId: _, ...newCaller } = taken
  await expect(bookPlace(desk, newCaller as Parameters<typeof bookPlace>[1])).rejects.toThrow()
  expect(await desk.store.read.customer.count()).toBe(count)
})
