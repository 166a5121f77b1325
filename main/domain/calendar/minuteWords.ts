import { say } from '../language/index.ts'
import { clockWords } from './clockWords.ts'
import { weekdayDate, weekdayName, weekdayWillDo } from './dayWords.ts'
import { dateOf } from './instants.ts'

/**
 * A minute as the desk says it: `14:00` today, `Tuesday 03:20` within six days either way, `Tue 21 April 03:20`
 * beyond.
 */
export function minuteWords(at: number, zone: string, nowAt: number): string {
  const [date, today] = [dateOf(at, zone), dateOf(nowAt, zone)]
  if (date === today) return clockWords(at, zone)
  if (weekdayWillDo(date, today))
    return say('{weekday} {clock}', { weekday: weekdayName(date), clock: clockWords(at, zone) })
  return datedWords(at, zone, nowAt)
}

/** A minute with its date: `Tue 21 April 03:20`, with the year where it is another: `Sat 2 January 2027 09:00`. */
export function datedWords(at: number, zone: string, nowAt: number): string {
  return say('{date} {clock}', {
    date: weekdayDate(dateOf(at, zone), dateOf(nowAt, zone)),
    clock: clockWords(at, zone),
  })
}

/** A minute as what is kept for years says it: `Wed 15 April 2026, 09:00`. */
export function momentWords(at: number, zone: string): string {
  return say('{date}, {clock}', { date: weekdayDate(dateOf(at, zone)), clock: clockWords(at, zone) })
}

/** A duration: `45 min`, `1 h 30 min`, `2 days 4 h`. */
export function durationWords(minutes: number): string {
  const days = Math.floor(minutes / 1440)
  const hours = Math.floor((minutes % 1440) / 60)
  const rest = minutes % 60
  if (minutes >= 2 * 1440)
    return [say('{days} days', { days }), hours > 0 ? `${hours} h` : ''].filter(Boolean).join(' ')
  const whole = Math.floor(minutes / 60)
  return [whole > 0 ? `${whole} h` : '', rest > 0 || whole === 0 ? say('{rest} min', { rest }) : '']
    .filter(Boolean)
    .join(' ')
}
