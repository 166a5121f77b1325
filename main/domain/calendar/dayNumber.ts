import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

/**
 * Dates as whole days since 1970-01-01, for the loops that walk over ten thousand cars: a Temporal date each would
 * take most of their time. The arithmetic is the proleptic Gregorian calendar's (ISO 8601), checked against Temporal.
 * Method: H. Hinnant, "chrono-Compatible Low-Level Date Algorithms" (eras of 400 years, years from March).
 */

const DAYS_PER_ERA = 146_097

export interface CivilDate {
  readonly year: number
  /** 1..12 */
  readonly month: number
  /** 1..31 */
  readonly day: number
}

/** The day number of a year, month and day that exist. */
export function dayNumberOf(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * DAYS_PER_ERA + dayOfEra - 719_468
}

/** The date of a day number. */
export function civilDate(dayNumber: number): CivilDate {
  const z = dayNumber + 719_468
  const era = Math.floor(z / DAYS_PER_ERA)
  const dayOfEra = z - era * DAYS_PER_ERA
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  }
}

/** How many days a month has. */
export function daysInMonth(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
}

/** The number its digits from one place to another spell, or NaN where one is no digit. */
function digits(text: string, from: number, to: number): number {
  let value = 0
  for (let i = from; i < to; i++) {
    const digit = text.charCodeAt(i) - 48
    if (!(digit >= 0 && digit <= 9)) return Number.NaN
    value = value * 10 + digit
  }
  return value
}

/** The day number of `YYYY-MM-DD`. Refuses anything that is not a date of the years 0001 to 9999 written so. */
export function dayNumber(date: string, field = 'date'): number {
  if (date.length === 10 && date[4] === '-' && date[7] === '-') {
    const year = digits(date, 0, 4)
    const month = digits(date, 5, 7)
    const day = digits(date, 8, 10)
    if (year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month))
      return dayNumberOf(year, month, day)
  }
  refuse(
    'date-bad',
    { [field]: date },
    say('"{date}" is not a date; write it as year-month-day, 2026-03-08.', { date }),
  )
}

/** A day number as `YYYY-MM-DD` (years 0000 to 9999). */
export function dateOfDay(dayNumber: number): string {
  const { year, month, day } = civilDate(dayNumber)
  return `${String(year).padStart(4, '0')}-${month < 10 ? '0' : ''}${month}-${day < 10 ? '0' : ''}${day}`
}

/** 1 (Monday) .. 7 (Sunday); 1970-01-01 was a Thursday. */
export function weekdayOf(dayNumber: number): number {
  return ((((dayNumber + 3) % 7) + 7) % 7) + 1
}

/** The same day of the month so many months on, or the month's last where it is shorter. */
export function addMonths(dayNumber: number, months: number): number {
  const { year, month, day } = civilDate(dayNumber)
  const count = year * 12 + month - 1 + months
  const y = Math.floor(count / 12)
  const m = count - y * 12 + 1
  return dayNumberOf(y, m, Math.min(day, daysInMonth(y, m)))
}
