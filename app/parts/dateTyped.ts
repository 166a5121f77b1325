import { dateText, inShopYears, readDate, readShortDate } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'

/** What a date field holds: a day, none, or text that is neither, with what to do about it. */
export type DateTyped = { date: string | null } | { remedy: string }

/**
 * The day that is typed, `YYYY-MM-DD`. `whole`: it is typed to its end, so a year of two digits is one too; before, it
 * may be the first half of another.
 */
export function readTyped(text: string, needed: boolean, whole: boolean): DateTyped {
  if (text.trim() === '' && !needed) return { date: null }
  const date = whole ? readShortDate(text) : readDate(text)
  if (date === null) {
    const example = { date: dateText('2026-12-31') }
    return {
      remedy: needed
        ? say('Write a date such as {date}.', example)
        : say('Write a date such as {date}, or leave it empty.', example),
    }
  }
  if (inShopYears(date)) return { date }
  return { remedy: say('{given} is out of range: give a year from 1950 to 2100.', { given: dateText(date) }) }
}

/** So many days after the one a field holds (before it: negative), and today where it holds none; null for no day. */
export function movedDate(from: string | null, by: number, today: string | null): string | null {
  if (from === null) return today
  const moved = Temporal.PlainDate.from(from).add({ days: by }).toString()
  return inShopYears(moved) ? moved : null
}
