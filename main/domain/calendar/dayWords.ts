import { word } from '../language/index.ts'
import { dayNumber, weekdayOf } from './dayNumber.ts'

/** Dates in words. Months and weekdays by their place: January is 0, Monday is 0. */
export const monthNames = [
  word('January'),
  word('February'),
  word('March'),
  word('April'),
  word('May'),
  word('June'),
  word('July'),
  word('August'),
  word('September'),
  word('October'),
  word('November'),
  word('December'),
] as const

export const weekdayNames = [
  word('Monday'),
  word('Tuesday'),
  word('Wednesday'),
  word('Thursday'),
  word('Friday'),
  word('Saturday'),
  word('Sunday'),
] as const

/** `2026-09-14` as "14 September 2026". */
export function dayWords(date: string): string {
  return `${Number(date.slice(8, 10))} ${monthNames[Number(date.slice(5, 7)) - 1]} ${date.slice(0, 4)}`
}

/** `2026-09-14` as "Mon 14 September 2026"; without its year where that is the year of `today`. */
export function weekdayDate(date: string, today = ''): string {
  const words = `${weekdayName(date).slice(0, 3)} ${dayWords(date)}`
  return date.slice(0, 4) === today.slice(0, 4) ? words.slice(0, -5) : words
}

/** The weekday of a date: "Monday". */
export function weekdayName(date: string): string {
  return weekdayNames[weekdayOf(dayNumber(date)) - 1] ?? ''
}

/** Whether a bare weekday names that day and no other: it is at most six days from today, either way. */
export function weekdayWillDo(date: string, today: string): boolean {
  return Math.abs(dayNumber(date) - dayNumber(today)) <= 6
}
