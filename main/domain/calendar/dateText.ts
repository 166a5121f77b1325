import { dateOrderNow, languageNow } from '../language/index.ts'
import { checkDate } from './instants.ts'

/** The years a shop has to do with, by their first and last day: every walk through days is bounded by them. */
export const shopYears = { first: '1950-01-01', last: '2100-12-31' } as const

/** No way of writing a date is longer, whatever blanks come with it. */
const longest = 40

/**
 * A day as somebody types it, as `YYYY-MM-DD`; null when it is none. Everywhere year, month, day ("2026-04-14",
 * "2026/4/14") and, with points, day, month, year ("14.4.2026"); otherwise in the order of the shop ("4/14/2026" or
 * "14/4/2026"), without any mark too ("04142026"). The year has four digits; `readShortDate` takes two.
 */
export function readDate(text: string): string | null {
  const typed = tidied(text)
  const yearFirst = /^(\d{4})([-/. ])(\d{1,2})\2(\d{1,2})$/.exec(typed)
  if (yearFirst) return inCalendar(yearFirst[1]!, yearFirst[3]!, yearFirst[4]!)
  const figures = /^(\d{2})(\d{2})(\d{4})$/.exec(typed)
  if (figures) {
    const date = ordered(figures[1]!, '', figures[2]!, figures[3]!)
    // What is none of these years in the shop's order has the year first, as ISO 8601's basic format does.
    if (date !== null && inShopYears(date)) return date
    return inCalendar(typed.slice(0, 4), typed.slice(4, 6), typed.slice(6))
  }
  const marked = /^(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})$/.exec(typed)
  return marked ? ordered(marked[1]!, marked[2]!, marked[3]!, marked[4]!) : null
}

/**
 * The same, and a year of two digits too, for text that is typed to its end: "4/14/26" may still become 2614. As POSIX
 * reads `%y`: 69 to 99 are of the last century, 00 to 68 of this one (IEEE Std 1003.1, strptime).
 */
export function readShortDate(text: string): string | null {
  const date = readDate(text)
  if (date !== null) return date
  const [, before, , year] = /^(\d{4}|\d{1,2}([-/. ])\d{1,2}\2)(\d{2})$/.exec(tidied(text)) ?? []
  return year === undefined ? null : readDate(`${before}${Number(year) >= 69 ? 19 : 20}${year}`)
}

/** Whether a day is of the years a shop has to do with. */
export function inShopYears(date: string): boolean {
  return date >= shopYears.first && date <= shopYears.last
}

/** Without the blanks around a mark, of which German has some: "14. 4. 2026". */
function tidied(text: string): string {
  if (text.length > longest) return ''
  return text
    .trim()
    .replaceAll(/\s*([-/.])\s*/g, '$1')
    .replaceAll(/\s+/g, ' ')
}

/** Day and month in the shop's order; nobody writes the month before a point. */
function ordered(one: string, mark: string, two: string, year: string): string | null {
  const dayFirst = mark === '.' || dateOrderNow() === 'dayFirst'
  return dayFirst ? inCalendar(year, two, one) : inCalendar(year, one, two)
}

function inCalendar(year: string, month: string, day: string): string | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  try {
    checkDate(date)
    return date
  } catch {
    return null
  }
}

/** A day as it may be typed in this shop, "4/14/2026": what a field asks for and shows. */
export function dateText(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  if (dateOrderNow() === 'monthFirst') return `${month}/${day}/${year}`
  return languageNow() === 'de' ? `${day}.${month}.${year}` : `${day}/${month}/${year}`
}
