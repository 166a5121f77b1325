import { zonedOf } from '../../domain/calendar/index.ts'

/** An epoch minute as the shop reads it: `Wed 15 April 2026, 09:00`. */
export function momentWords(at: number, zone: string): string {
  const time = zonedOf(at, zone)
  const day = time.toLocaleString('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  })
  return `${day.replace(',', '')}, ${time.toPlainTime().toString({ smallestUnit: 'minute' })}`
}
