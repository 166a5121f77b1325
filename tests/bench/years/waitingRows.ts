import { dateOf } from '../../../main/domain/calendar/index.ts'
import type { Row } from './insertRows.ts'
import type { Car } from './people.ts'

/** Treatments of the demo's shop. */
const wishes = [['demo-two-layers'], ['demo-wash'], ['demo-one-step', 'demo-two-layers']]

/** Callers who wait for an earlier place: a dozen a floor, each for a fortnight of their own. */
export function waitingRows(cars: readonly Car[], lanes: number, nowAt: number, zone: string): Row[] {
  return cars
    .filter(car => car.finish === 'gloss')
    .slice(0, 12 * lanes)
    .map((car, n) => ({
      id: `years-waiting-${n}`,
      customerId: car.customerId,
      vehicleId: car.id,
      treatmentIds: JSON.stringify(wishes[n % wishes.length]),
      fromOn: dateOf(nowAt + (1 + (n % 9)) * 1440, zone),
      toOn: dateOf(nowAt + (15 + (n % 9)) * 1440, zone),
      weekdays: n % 4 === 0 ? '[1,2]' : '[]',
      createdAt: nowAt - (40 - n) * 60,
    }))
}
