import { dateOf, dateOfDay, dayNumber, wallMinuteOf } from '../../../domain/calendar/index.ts'
import { deliveryWindow, type LeadTime, orderDay, type Supplier } from '../../../domain/shelf/index.ts'

/** The days an order placed now is expected on average, and by which nine in ten such orders are here. */
export function dueDays(
  supplier: Supplier,
  lead: LeadTime,
  nowAt: number,
  zone: string,
): { expectedOn: string; lateFromOn: string; placedOn: string } {
  const placed = orderDay(supplier, dayNumber(dateOf(nowAt, zone)), wallMinuteOf(nowAt, zone))
  const window = deliveryWindow(
    { ...supplier, lead },
    { placedOn: dateOfDay(placed), promisedOn: null },
    placed - 1,
  )
  return {
    placedOn: dateOfDay(placed),
    expectedOn: dateOfDay(window.likelyDay),
    lateFromOn: dateOfDay(window.lateDay),
  }
}
