import {
  dateOf,
  momentWords,
  wallWords,
  weekdayDate,
  weekdayShort,
  weekdayWillDo,
} from '../../main/domain/calendar/index.ts'
import { clockHoursNow, dateOrderNow, say } from '../../main/domain/language/index.ts'

/** Words for points in time, in the shop's zone, as the shop writes them. */

/** How a picked date is shown, in the letters of the date field: "Thu 16 April 2026". */
export function pickedDate(): string {
  return dateOrderNow() === 'monthFirst' ? say('ddd, MMMM D, YYYY') : say('ddd D MMMM YYYY')
}

/** The same with its time. */
export function pickedMoment(): string {
  return `${pickedDate()}, ${clockHoursNow() === 24 ? 'HH:mm' : 'h:mm a'}`
}

const formats = new Map<string, Intl.DateTimeFormat>()

/** Making a format costs a hundred times its use, and a board says a hundred times at each refresh. */
function clockIn(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone)
  if (!format) {
    const options = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const
    format = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: zone })
    formats.set(zone, format)
  }
  return format
}

/** "14:05" or "2:05 pm" */
export function clockWords(at: number, zone: string): string {
  const [hour, minute] = clockIn(zone)
    .format(at * 60_000)
    .split(':')
    .map(Number)
  return wallWords(hour! * 60 + minute!)
}

/** "Tue 14:05" */
function dayClockWords(at: number, zone: string): string {
  return say('{weekday} {clock}', { weekday: weekdayShort(dateOf(at, zone)), clock: clockWords(at, zone) })
}

/**
 * "Tue 14:05" within six days either way, "Thu 16 April, 17:00" beyond, where a bare weekday would name another week's;
 * in another year with the year.
 */
export function nearWords(at: number, zone: string, nowAt: number): string {
  return weekdayWillDo(dateOf(at, zone), dateOf(nowAt, zone))
    ? dayClockWords(at, zone)
    : longWords(at, zone, nowAt)
}

/** "14:05" today; on any other day with the day, as `nearWords` says it. */
export function todayWords(at: number, zone: string, nowAt: number): string {
  return dateOf(at, zone) === dateOf(nowAt, zone) ? clockWords(at, zone) : nearWords(at, zone, nowAt)
}

/** "Thu 16 April, 17:00", with the year where that is not the year of `nowAt`. */
export function longWords(at: number, zone: string, nowAt = at): string {
  return say('{date}, {clock}', {
    date: weekdayDate(dateOf(at, zone), dateOf(nowAt, zone)),
    clock: clockWords(at, zone),
  })
}

/** "Thu 16 April 2026, 17:00", for what is kept for years. */
export function fullWords(at: number, zone: string): string {
  return momentWords(at, zone)
}

/** "Thu 16" over a column of a day; "16" where there is no room for more. */
export function columnWords(date: string, weekday = true): string {
  const day = Number(date.slice(8))
  return weekday ? say('{weekday} {day}', { weekday: weekdayShort(date), day }) : String(day)
}

/** "Thu 16 April" of a day written YYYY-MM-DD. */
export function dateWords(date: string): string {
  return weekdayDate(date, date)
}

/** "Thu 16 April 2026", for days that may lie years away. */
export function fullDateWords(date: string): string {
  return weekdayDate(date)
}

/** "6 h 50", "45 min", "2 d 3 h" for a stretch of minutes. */
export function durationWords(minutes: number): string {
  if (minutes < 60) return say('{minutes} min', { minutes })
  const days = minutes >= 48 * 60 ? Math.floor(minutes / 1440) : 0
  const hours = Math.floor((minutes - days * 1440) / 60)
  const rest = minutes % 60
  if (days > 0) return [say('{days} d', { days }), hours > 0 ? `${hours} h` : ''].filter(Boolean).join(' ')
  return rest > 0 ? `${hours} h ${String(rest).padStart(2, '0')}` : `${hours} h`
}
