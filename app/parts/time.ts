import { zonedOf } from '../../main/domain/calendar/index.ts'

/** Words for points in time, in the shop's zone, with a 24 hour clock. */

function words(at: number, zone: string, parts: Intl.DateTimeFormatOptions): string {
  return zonedOf(at, zone).toLocaleString('en-GB', { ...parts, hourCycle: 'h23' })
}

/** "14:05" */
export function clockWords(at: number, zone: string): string {
  return words(at, zone, { hour: '2-digit', minute: '2-digit' })
}

/** "Tue 14:05" */
export function dayClockWords(at: number, zone: string): string {
  return `${words(at, zone, { weekday: 'short' })} ${clockWords(at, zone)}`
}

/** "Thu 16 April, 17:00" */
export function longWords(at: number, zone: string): string {
  const day = zonedOf(at, zone)
  return `${dateWords(day.toPlainDate().toString())}, ${clockWords(at, zone)}`
}

/** "Thu 16 April" of a day written YYYY-MM-DD. */
export function dateWords(date: string): string {
  const day = Temporal.PlainDate.from(date)
  const name = (part: Intl.DateTimeFormatOptions) => day.toLocaleString('en-GB', part)
  return `${name({ weekday: 'short' })} ${day.day} ${name({ month: 'long' })}`
}

/** "6 h 50", "45 min", "2 d 3 h" for a stretch of minutes. */
export function durationWords(minutes: number): string {
  if (minutes < 60) return `${minutes} min`
  const days = minutes >= 48 * 60 ? Math.floor(minutes / 1440) : 0
  const hours = Math.floor((minutes - days * 1440) / 60)
  const rest = minutes % 60
  if (days > 0) return hours > 0 ? `${days} d ${hours} h` : `${days} d`
  return rest > 0 ? `${hours} h ${String(rest).padStart(2, '0')}` : `${hours} h`
}
