/** The shop's days as the shelf counts them: day numbers, which of them are open, and how many open ones lie between. */
import {
  dateOfDay,
  daysBetween,
  firstIndex,
  type ShopCalendar,
  startOfDay,
  weekdayOf,
} from '../../domain/calendar/index.ts'

export interface ShopDays {
  /** Whether the shop opens on a day number. */
  open(day: number): boolean
  /** The day number of an epoch minute between the first and the last day. */
  dayOf(at: number): number
  /** How many open days lie before a day number: an open day's own number in the count. */
  openBefore(day: number): number
  /** The open days of an ordinary year. */
  readonly openPerYear: number
}

/** The days from `first` to `last`, both day numbers. */
export function shopDays(calendar: ShopCalendar, first: number, last: number): ShopDays {
  const weekdays = new Set(calendar.weekly.map(each => each.weekday))
  const exceptions = new Map(calendar.exceptions.map(each => [each.date, each.hours.length > 0]))
  const open = (day: number) => exceptions.get(dateOfDay(day)) ?? weekdays.has(weekdayOf(day))
  const starts = daysBetween(
    startOfDay(dateOfDay(first), calendar.zone),
    startOfDay(dateOfDay(last + 1), calendar.zone),
    calendar.zone,
  ).map(day => day.from)
  const before = new Int32Array(last - first + 2)
  for (let day = first; day <= last; day++)
    before[day - first + 1] = (before[day - first] ?? 0) + (open(day) ? 1 : 0)
  return {
    open,
    // The day before the first that begins later; a time before the first day counts as on it.
    dayOf: at => first + Math.max(0, firstIndex(starts.length, i => (starts[i] ?? 0) > at) - 1),
    openBefore: day => before[Math.max(0, Math.min(day, last + 1) - first)] ?? 0,
    openPerYear: Math.max(1, Math.round((weekdays.size * 365) / 7)),
  }
}
