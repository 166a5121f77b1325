import { dateOrderNow, languageNow } from '../language/index.ts'
import { checkDate } from './instants.ts'

/**
 * A day as somebody types it, as `YYYY-MM-DD`; null when it is none: "2026-04-14" and "14.4.2026" everywhere, and
 * "4/14/2026" or "14/4/2026" in the order of the shop.
 */
export function readDate(text: string): string | null {
  const typed = text.trim()
  const parts = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/.exec(typed)
  const [, one = '', mark, two = '', year = ''] = parts ?? []
  // Nobody writes the month before a point.
  const dayFirst = mark === '.' || dateOrderNow() === 'dayFirst'
  const [day, month] = dayFirst ? [one, two] : [two, one]
  const date = parts ? `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}` : typed
  try {
    checkDate(date)
    return date
  } catch {
    return null
  }
}

/** A day as it may be typed in this shop, "4/14/2026": what a field asks for. */
export function dateText(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  if (dateOrderNow() === 'monthFirst') return `${month}/${day}/${year}`
  return languageNow() === 'de' ? `${day}.${month}.${year}` : `${day}/${month}/${year}`
}
