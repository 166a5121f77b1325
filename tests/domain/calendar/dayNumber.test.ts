// ISO 8601, by Temporal's calendar.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addMonths, dateOfDay, dayNumber, weekdayOf } from '../../../main/domain/calendar/dayNumber.ts'

describe('day numbers', () => {
  it('agree with Temporal over all years', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: dayNumber('0001-01-01'), max: dayNumber('9999-12-31') }),
        fc.integer({ min: -1000, max: 1000 }),
        (n, months) => {
          const date = Temporal.PlainDate.from('1970-01-01').add({ days: n })
          expect(dateOfDay(n)).toBe(date.toString())
          expect(dayNumber(dateOfDay(n))).toBe(n)
          expect(weekdayOf(n)).toBe(date.dayOfWeek)
          const moved = date.add({ months })
          if (moved.year >= 1 && moved.year <= 9999)
            expect(dateOfDay(addMonths(n, months))).toBe(moved.toString())
        },
      ),
      { numRuns: 2000 },
    )
  })

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '26-01-01', '2026-1-1', '2026-01-01T00:00', 'soon', ''])(
    'refuses "%s"',
    date => {
      expect(() => dayNumber(date, 'on')).toThrow(expect.objectContaining({ code: 'date-bad', field: 'on' }))
    },
  )
})
