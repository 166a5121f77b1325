import { confirmPlace, holdPlace } from '../../main/services/booking/booking.ts'
import { offers } from '../../main/services/booking/offers.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import type { JobView } from '../../main/services/job/jobView.ts'
import { getJob } from '../../main/services/job/jobView.ts'
import type { TestShop } from './testShop.ts'

export interface BookWish {
  treatments: (keyof TestShop['treatments'])[]
  vehicle?: number
  kind?: 'soonest' | 'leastBlocked' | 'askedDay'
  askedDate?: string
}

/** Books as the desk does, offer, hold and confirm, and returns the job. */
export async function bookJob(desk: Desk, shop: TestShop, wish: BookWish): Promise<JobView> {
  const { vehicle = 0, kind = 'soonest', askedDate } = wish
  const treatmentIds = wish.treatments.map(name => shop.treatments[name])
  const dated = askedDate === undefined ? {} : { askedDate }
  const view = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds, ...dated })
  const offer = view[kind]
  if (!offer.feasible) throw new Error(offer.reasons.join(' '))
  const held = await holdPlace(desk, {
    vehicleId: shop.vehicles[vehicle]!,
    condition: 'good',
    treatmentIds,
    ...dated,
    plan: offer.plan,
  })
  await confirmPlace(desk, held)
  return getJob(desk, { id: held.jobId })
}
