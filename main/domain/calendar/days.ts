/** Days and weeks of the calendar: lengths across clock changes, ISO 8601 weeks, and walking day by day. */

import { clockChanges } from './clockChanges.ts'
import { dateOf, startOfDay } from './instants.ts'

export interface IsoWeek {
  readonly isoYear: number
  /** 1..53 */
  readonly isoWeek: number
  /** 1 (Monday) .. 7 (Sunday) */
  readonly isoDay: number
}

/** The ISO 8601 week a date (`YYYY-MM-DD`) lies in: week 1 is the one with the year's first Thursday. */
export function isoWeek(date: string): IsoWeek {
  const day = Temporal.PlainDate.from(date)
  return { isoYear: day.yearOfWeek!, isoWeek: day.weekOfYear!, isoDay: day.dayOfWeek }
}

/** How many minutes a date lasts in `zone`: 1440 but for clock changes; 0 for a date the zone skipped. */
export function dayLength(date: string, zone: string): number {
  const next = Temporal.PlainDate.from(date).add({ days: 1 }).toString()
  return startOfDay(next, zone) - startOfDay(date, zone)
}

export interface Day {
  readonly date: string
  /** 1 (Monday) .. 7 (Sunday) */
  readonly weekday: number
  /** First epoch minute. */
  readonly from: number
  /** First epoch minute of the next date. */
  readonly to: number
  /** No clock change touches it: a wall minute is that many minutes after `from`. */
  readonly even: boolean
}

/**
 * The dates of `zone` that touch `[fromAt, toAt)`, in order. Only days beside a clock change ask the time zone
 * database; the others follow by adding 1440 minutes, which keeps half a year of many calendars cheap.
 */
export function daysBetween(fromAt: number, toAt: number, zone: string): Day[] {
  const days: Day[] = []
  let day = Temporal.PlainDate.from(dateOf(fromAt, zone))
  let from = startOfDay(day.toString(), zone)
  const changes = clockChanges(zone, from, toAt + 2 * 1440).map(change => change.at)
  let weekday = day.dayOfWeek
  let next = 0
  while (from < toAt) {
    const tomorrow = day.add({ days: 1 })
    while (next < changes.length && changes[next]! < from) next++
    const calm = next === changes.length || changes[next]! > from + 1440
    const to = calm ? from + 1440 : startOfDay(tomorrow.toString(), zone)
    const even = calm || changes[next]! >= to
    if (to > fromAt) days.push({ date: day.toString(), weekday, from, to, even })
    day = tomorrow
    from = to
    weekday = (weekday % 7) + 1
  }
  return days
}
