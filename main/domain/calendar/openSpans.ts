/** Written hours made into spans of real time, exact across clock changes. */
import { daysBetween } from './days.ts'
import type { OpeningHours, ShopCalendar, WallSpan } from './hours.ts'
import { atWall, checkZone } from './instants.ts'
import { clip, difference, intersection, type Span, spanSet } from './spans.ts'

/**
 * The shop's openings in `[fromAt, toAt)`, as a set of epoch minutes. An opening runs from the moment its first wall
 * time comes to the moment its last one comes: on a clock-change night a shop open 00:00 to 06:00 is open 5 or 7 real
 * hours. A wall time the clock repeats means the earlier one; one that it skips moves on by the skipped time (02:30
 * becomes 03:30), and an opening left empty by that falls away. An opening never leaves its date, so a date the zone
 * skipped has none. Openings that touch (24:00 and 00:00 of the next day) are one.
 * @throws Refusal when the zone is unknown. Hours are taken as `checkCalendar` accepts them.
 */
export function openSpans(calendar: ShopCalendar, fromAt: number, toAt: number): Span[] {
  checkZone(calendar.zone)
  const exceptions = new Map(calendar.exceptions.map(({ date, hours }) => [date, hours]))
  const byWeekday = weekdays(calendar.weekly)
  const spans: Span[] = []
  for (const day of daysBetween(fromAt, toAt, calendar.zone)) {
    const hours: readonly WallSpan[] = exceptions.get(day.date) ?? byWeekday[day.weekday]!
    for (const { from, to } of hours) {
      if (day.even) spans.push({ from: day.from + from, to: day.from + to })
      else
        spans.push({
          from: Math.max(day.from, atWall(day.date, from, calendar.zone)),
          to: Math.min(day.to, atWall(day.date, to, calendar.zone)),
        })
    }
  }
  return clip(spanSet(spans), fromAt, toAt)
}

function weekdays(weekly: readonly OpeningHours[]): OpeningHours[][] {
  const byWeekday: OpeningHours[][] = Array.from({ length: 8 }, () => [])
  for (const hours of weekly) byWeekday[hours.weekday]!.push(hours)
  return byWeekday
}

/** When one of the crew works: weekly hours on the shop's clock (null: whenever the shop is open), less absences. */
export interface CrewHours {
  readonly weekly: readonly OpeningHours[] | null
  readonly absences: readonly Span[]
}

/** The opening minutes in which one of the crew is there. `open` is the shop's `openSpans`. */
export function crewSpans(open: readonly Span[], zone: string, crew: CrewHours): Span[] {
  const first = open[0]
  const last = open.at(-1)
  if (!first || !last) return []
  const there = crew.weekly
    ? intersection(open, openSpans({ zone, weekly: crew.weekly, exceptions: [] }, first.from, last.to))
    : open
  return difference(there, spanSet(crew.absences))
}
