// English date words as CLDR has them, by Intl.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import {
  dateOfDay,
  dayWords,
  weekdayDate,
  weekdayName,
  weekdayNames,
  weekdayOf,
  weekdayWillDo,
} from '../../../main/domain/calendar/index.ts'

it('are those of British English, over all years of four figures', () => {
  fc.assert(
    fc.property(fc.integer({ min: -300_000, max: 2_900_000 }), day => {
      const date = Temporal.PlainDate.from(dateOfDay(day))
      const year = String(date.year).padStart(4, '0')
      const month = date.toLocaleString('en-GB', { month: 'long' })
      expect(dayWords(date.toString())).toBe(`${date.day} ${month} ${year}`)
      expect(weekdayNames[weekdayOf(day) - 1]).toBe(date.toLocaleString('en-GB', { weekday: 'long' }))
    }),
  )
  expect(dayWords('2026-09-14')).toBe('14 September 2026')
})

it('have their weekday, and the year where it is not that of today', () => {
  expect(weekdayDate('2026-09-14')).toBe('Mon 14 September 2026')
  expect(weekdayDate('2026-09-14', '2026-01-01')).toBe('Mon 14 September')
  expect(weekdayDate('2027-01-01', '2026-12-31')).toBe('Fri 1 January 2027')
  expect(weekdayName('2026-09-14')).toBe('Monday')
})

it('let a bare weekday do up to six days off, either way and over the end of a year', () => {
  for (const [date, enough] of [
    ['2026-12-22', false],
    ['2026-12-23', true],
    ['2026-12-29', true],
    ['2027-01-04', true],
    ['2027-01-05', false],
    ['2027-12-29', false],
  ] as const)
    expect(weekdayWillDo(date, '2026-12-29')).toBe(enough)
})
