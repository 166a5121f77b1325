import { beforeEach, describe, expect, it } from 'vitest'
import { confirmPlace, holdPlace } from '../../../main/services/booking/booking.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { archiveCustomer, saveCustomer } from '../../../main/services/records/customers.ts'
import { archiveVehicle, saveVehicle } from '../../../main/services/records/vehicles.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop

const now = '2026-04-15T12:10:00Z'
/** A hold lasts half an hour. */
const lapsed = '2026-04-15T12:45:00Z'

beforeEach(async () => {
  desk = await makeDesk(now)
  shop = await testShop(desk)
})

async function washOffered() {
  const treatmentIds = [shop.treatments.wash]
  const condition = 'good' as const
  const { askedDay } = await offers(desk, {
    sizeClass: 'medium',
    condition,
    treatmentIds,
    askedDate: '2026-04-17',
  })
  if (!askedDay.feasible) throw new Error(askedDay.reasons.join(' '))
  return { condition, treatmentIds, plan: askedDay.plan }
}

/** A new customer with a car, and how either is put away. */
async function caller(no: number, put: string) {
  const customer = await saveCustomer(desk, { name: `Edda Marsh ${no}` })
  const car = await saveVehicle(desk, {
    customerId: customer.id,
    plate: `QLM ${no}`,
    sizeClass: 'medium',
    finish: 'gloss',
  })
  const seen = ({ id, version }: typeof customer) => ({ id, version })
  const putAway = () =>
    put === 'customer' ? archiveCustomer(desk, seen(customer)) : archiveVehicle(desk, seen(car))
  return { vehicleId: car.id, putAway }
}

/** Both at the same moment; what became of them, the one begun first first. */
async function race(first: () => Promise<unknown>, second: () => Promise<unknown>) {
  const ended = await Promise.allSettled([first(), second()])
  return ended.map(each => (each.status === 'fulfilled' ? 'done' : each.reason.code))
}

const free = () =>
  desk.store.transact({ who: 'test', at: 0 }, tx => tx.job.updateMany({ data: { status: 'cancelled' } }))

describe.each(['customer', 'vehicle'])('a %s put away in one window', put => {
  const booked = `${put}-booked`

  it('is never held for in another: the one that comes second is refused', async () => {
    const wish = await washOffered()
    for (let no = 100; no < 110; no++) {
      const { vehicleId, putAway } = await caller(no, put)
      const hold = () => holdPlace(desk, { ...wish, vehicleId })
      expect(await race(hold, putAway)).toEqual(['done', booked])
      await free()
      expect(await race(putAway, hold)).toEqual(['done', 'missing'])
    }
  })

  it('is never booked in another, though its place was held and has lapsed', async () => {
    const wish = await washOffered()
    for (let no = 100; no < 110; no++)
      for (const confirmsFirst of [true, false]) {
        desk.setNow(now)
        const { vehicleId, putAway } = await caller(no + (confirmsFirst ? 0 : 100), put)
        const held = await holdPlace(desk, { ...wish, vehicleId })
        desk.setNow(lapsed)
        const confirm = () => confirmPlace(desk, held)
        const came = confirmsFirst ? await race(confirm, putAway) : await race(putAway, confirm)
        expect(came).toEqual(['done', confirmsFirst ? booked : 'missing'])
        await free()
      }
  })
})
