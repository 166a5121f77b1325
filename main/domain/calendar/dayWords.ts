import { dateOrderNow, say, word } from '../language/index.ts'
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

const shortWeekdays = [
  word('Mon'),
  word('Tue'),
  word('Wed'),
  word('Thu'),
  word('Fri'),
  word('Sat'),
  word('Sun'),
] as const

/** `2026-09-14` as "14 September 2026", or "September 14, 2026"; without its year where that is the year of `today`. */
export function dayWords(date: string, today = ''): string {
  const parts = partsOf(date)
  const thisYear = date.slice(0, 4) === today.slice(0, 4)
  if (dateOrderNow() === 'monthFirst')
    return thisYear ? say('{month} {day}', parts) : say('{month} {day}, {year}', parts)
  return thisYear ? say('{day} {month}', parts) : say('{day} {month} {year}', parts)
}

/** The same with its whole weekday: "Monday 14 September 2026". */
export function longDayWords(date: string, today = ''): string {
  const parts = { weekday: weekdayName(date), day: dayWords(date, today) }
  return dateOrderNow() === 'monthFirst'
    ? say('{weekday}, {day}||a date in full', parts)
    : say('{weekday} {day}||a date in full', parts)
}

/** `2026-09-14` as "Mon 14 September 2026", or "Mon, September 14, 2026"; without its year where that is the year of `today`. */
export function weekdayDate(date: string, today = ''): string {
  const parts = { weekday: weekdayShort(date), ...partsOf(date) }
  const thisYear = date.slice(0, 4) === today.slice(0, 4)
  if (dateOrderNow() === 'monthFirst')
    return thisYear ? say('{weekday}, {month} {day}', parts) : say('{weekday}, {month} {day}, {year}', parts)
  return thisYear ? say('{weekday} {day} {month}', parts) : say('{weekday} {day} {month} {year}', parts)
}

/** The weekday of a date: "Monday". */
export function weekdayName(date: string): string {
  return say(weekdayNames[weekdayOf(dayNumber(date)) - 1] ?? '')
}

/** The same in short: "Mon". */
export function weekdayShort(date: string): string {
  return say(shortWeekdays[weekdayOf(dayNumber(date)) - 1] ?? '')
}

function partsOf(date: string) {
  const month = say(monthNames[Number(date.slice(5, 7)) - 1] ?? '')
  return { day: Number(date.slice(8, 10)), month, year: date.slice(0, 4) }
}

/** Whether a bare weekday names that day and no other: it is at most six days from today, either way. */
export function weekdayWillDo(date: string, today: string): boolean {
  return Math.abs(dayNumber(date) - dayNumber(today)) <= 6
}
