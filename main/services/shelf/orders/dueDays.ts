import { dateOf, wallMinuteOf } from '../../../domain/calendar/index.ts'
import {
  afterWorkingDays,
  dateOfDay,
  dayNumber,
  type LeadTime,
  leadChances,
  orderDay,
  type Supplier,
  workingDayOf,
} from '../../../domain/shelf/index.ts'

/** The days an order placed now is expected on average, and by which nine in ten such orders are here. */
export function dueDays(
  supplier: Supplier,
  lead: LeadTime,
  nowAt: number,
  zone: string,
): { expectedOn: string; lateFromOn: string; placedOn: string } {
  const placed = orderDay(supplier, dayNumber(dateOf(nowAt, zone)), wallMinuteOf(nowAt, zone))
  const works = workingDayOf(supplier)
  const after = (days: number) => dateOfDay(afterWorkingDays(placed, days, works))
  let sum = 0
  const chances = leadChances(lead)
  const late = chances.findIndex(chance => {
    sum += chance
    return sum >= 0.9
  })
  return {
    placedOn: dateOfDay(placed),
    expectedOn: after(Math.max(1, Math.round(lead.meanDays))),
    lateFromOn: after(late < 0 ? chances.length - 1 : Math.max(1, late)),
  }
}
