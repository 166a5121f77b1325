import { dateOf, weekdayDate, weekdayWillDo } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'

/** Words for points in time, in the shop's zone, with a 24 hour clock. */

const kinds = {
  clock: { hour: '2-digit', minute: '2-digit' },
  weekday: { weekday: 'short' },
} satisfies Record<string, Intl.DateTimeFormatOptions>

const formats = new Map<string, Intl.DateTimeFormat>()

/** Making a format costs a hundred times its use, and a board says a hundred times at each refresh. */
function words(at: number, zone: string, kind: keyof typeof kinds): string {
  const key = `${kind} ${zone}`
  let format = formats.get(key)
  if (!format) {
    format = new Intl.DateTimeFormat('en-GB', { ...kinds[kind], timeZone: zone, hourCycle: 'h23' })
    formats.set(key, format)
  }
  return format.format(at * 60_000)
}

/** "14:05" */
export function clockWords(at: number, zone: string): string {
  return words(at, zone, 'clock')
}

/** "Tue 14:05" */
export function dayClockWords(at: number, zone: string): string {
  return `${words(at, zone, 'weekday')} ${clockWords(at, zone)}`
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

/** "Thu 16 April, 17:00", with the year where that is not the year of `nowAt`. */
export function longWords(at: number, zone: string, nowAt = at): string {
  return `${weekdayDate(dateOf(at, zone), dateOf(nowAt, zone))}, ${clockWords(at, zone)}`
}

/** "Thu 16 April 2026, 17:00", for what is kept for years. */
export function fullWords(at: number, zone: string): string {
  return `${weekdayDate(dateOf(at, zone))}, ${clockWords(at, zone)}`
}

/** "Thu 16" over a column of a day. */
export function columnWords(date: string): string {
  return dateWords(date).split(' ').slice(0, 2).join(' ')
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
  if (days > 0) return hours > 0 ? `${days} d ${hours} h` : `${days} d`
  return rest > 0 ? `${hours} h ${String(rest).padStart(2, '0')}` : `${hours} h`
}
