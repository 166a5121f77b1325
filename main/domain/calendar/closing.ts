import type { ShopCalendar } from './hours.ts'
import { startOfDay } from './instants.ts'
import { openSpans } from './openSpans.ts'

/** A shop that is closed for longer is taken to have no closing time to speak of. */
const daysAhead = 31

/**
 * The epoch minute at which the shop closes on a date (`YYYY-MM-DD`), or where it stays closed that day on the next day
 * it opens. Null where it opens on none of the 31 days from then on.
 */
export function closingFrom(calendar: ShopCalendar, date: string): number | null {
  const first = Temporal.PlainDate.from(date)
  for (let ahead = 0; ahead < daysAhead; ahead++) {
    const day = first.add({ days: ahead })
    const [fromAt, toAt] = [day, day.add({ days: 1 })].map(each => startOfDay(each.toString(), calendar.zone))
    const closing = openSpans(calendar, fromAt ?? 0, toAt ?? 0).at(-1)
    if (closing) return closing.to
  }
  return null
}
