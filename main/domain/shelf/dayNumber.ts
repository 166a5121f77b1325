/**
 * Dates as day numbers (days since 1970-01-01), for arithmetic over thousands of lots. The conversion is plain integer
 * arithmetic on the proleptic Gregorian calendar: a date has no zone, so nothing here asks a clock.
 */
import { Refusal } from '../refusal.ts'

const DAYS_PER_ERA = 146_097
const DAYS_TO_1970 = 719_468

/** `1970-01-02` as 1. Refuses text that is not a date of the calendar. */
export function dayNumber(date: string, field = 'date'): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date)
  const number = match ? fromCivil(Number(match[1]), Number(match[2]), Number(match[3])) : Number.NaN
  if (!match || dateOfDay(number) !== date)
    throw new Refusal('date-bad', field, date, `${date} is not a date; write it as 2026-04-15.`)
  return number
}

/** 1 as `1970-01-02`. */
export function dateOfDay(day: number): string {
  const shifted = day + DAYS_TO_1970
  const era = Math.floor(shifted / DAYS_PER_ERA)
  const dayOfEra = shifted - era * DAYS_PER_ERA
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153)
  const dayOfMonth = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`
}

/** ISO weekday of a day number: 1 Monday .. 7 Sunday. 1970-01-01 was a Thursday. */
export function weekdayOf(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1
}

// The year is taken to begin in March, so that the leap day is its last.
function fromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * DAYS_PER_ERA + dayOfEra - DAYS_TO_1970
}
