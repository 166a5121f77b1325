import { openSpans, type ShopCalendar } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { calendarOf } from '../desk/shopView.ts'
import { comingJobs, newlyTouched, touchedLines, touchedOutside } from '../floor/comingJobs.ts'

/**
 * Says what the opening hours just written leave outside that lay inside `before`. Call it after the write, in the same
 * transaction: a refusal takes the write back.
 * @throws Refusal `touches-bookings` naming the jobs, unless `accepted`.
 */
export async function askOfHours(
  tx: Tx,
  options: { before: ShopCalendar; nowAt: number; field: string; accepted: boolean | undefined },
): Promise<void> {
  const { before, nowAt, field, accepted } = options
  const after = await calendarOf(tx)
  if (JSON.stringify(after) === JSON.stringify(before)) return
  const jobs = await comingJobs(tx, nowAt)
  const toAt = Math.max(nowAt, ...jobs.map(job => job.handoverAt)) + 1
  // A day's margin, so that an opening that began before now is whole.
  const outside = (calendar: ShopCalendar) =>
    touchedOutside(jobs, openSpans(calendar, nowAt - 1440, toAt), before.zone, nowAt)
  askFirst('touches-bookings', touchedLines(newlyTouched(outside(before), outside(after))), {
    field,
    lead: say(
      'These bookings would fall outside the opening hours; they stay where they are until somebody moves them:',
    ),
    accepted,
  })
}
