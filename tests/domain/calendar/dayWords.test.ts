// English date words as CLDR has them, by Intl.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dateOfDay, dayWords, weekdayNames, weekdayOf } from '../../../main/domain/calendar/index.ts'

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
