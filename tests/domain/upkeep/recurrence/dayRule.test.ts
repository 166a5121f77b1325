import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addMonths,
  dateText,
  dayNumber,
  weekdayOf,
} from '../../../../main/domain/upkeep/recurrence/dayNumber.ts'
import { dayRule, writtenOut } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'
import { firstOccurrences } from '../../../../main/domain/upkeep/recurrence/occurrences.ts'

const aDay = fc.integer({ min: dayNumber('1970-01-01'), max: dayNumber('2150-12-31') })

describe('day numbers', () => {
  it('agree with Temporal over all years', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: dayNumber('0001-01-01'), max: dayNumber('9999-12-31') }),
        fc.integer({ min: -1000, max: 1000 }),
        (n, months) => {
          const date = Temporal.PlainDate.from('1970-01-01').add({ days: n })
          expect(dateText(n)).toBe(date.toString())
          expect(dayNumber(dateText(n))).toBe(n)
          expect(weekdayOf(n)).toBe(date.dayOfWeek)
          const moved = date.add({ months })
          if (moved.year >= 1 && moved.year <= 9999)
            expect(dateText(addMonths(n, months))).toBe(moved.toString())
        },
      ),
      { numRuns: 2000 },
    )
  })

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '26-01-01', '2026-1-1', '2026-01-01T00:00', ''])(
    'refuses "%s"',
    date => {
      expect(() => dayNumber(date, 'on')).toThrow(expect.objectContaining({ code: 'date-bad', field: 'on' }))
    },
  )
})

describe('a rule read as days', () => {
  const frequency = fc.constantFrom('DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY')
  const interval = fc.integer({ min: 1, max: 30 })

  it('names the days of the RFC rule it is written out as', () => {
    fc.assert(
      fc.property(
        frequency,
        interval,
        aDay,
        fc.option(fc.integer({ min: 1, max: 8 })),
        (freq, every, start, count) => {
          const rule = `FREQ=${freq};INTERVAL=${every}${count === null ? '' : `;COUNT=${count}`}`
          const days = dayRule(rule, 'America/New_York')
          const found: number[] = []
          let day = days.next(start, start - 1)
          while (day !== null && found.length < 8) {
            found.push(day)
            day = days.next(start, day)
          }
          const recurrence = { rule: writtenOut(rule, start), start: `${dateText(start)}T09:00`, zone: 'UTC' }
          expect(found.map(dateText)).toEqual(
            firstOccurrences(recurrence, 8).map(({ wall }) => wall.slice(0, 10)),
          )
        },
      ),
      { numRuns: 500 },
    )
  })

  it('finds the first day after any other, as a search one by one does', () => {
    fc.assert(
      fc.property(
        frequency,
        interval,
        aDay,
        fc.integer({ min: -400, max: 9000 }),
        (freq, every, start, later) => {
          const days = dayRule(`FREQ=${freq};INTERVAL=${every}`, 'UTC')
          let day = days.next(start, start - 1)!
          expect(day).toBe(start)
          while (day <= start + later) day = days.next(start, day)!
          expect(days.next(start, start + later)).toBe(day)
        },
      ),
    )
  })

  it('falls on the last day of a shorter month, where the bare RFC rule skips it', () => {
    const start = dayNumber('2026-08-31')
    expect(dateText(dayRule('FREQ=MONTHLY;INTERVAL=6', 'UTC').next(start, start)!)).toBe('2027-02-28')
    const [, bare] = firstOccurrences(
      { rule: 'FREQ=MONTHLY;INTERVAL=6', start: '2026-08-31T09:00', zone: 'UTC' },
      2,
    )
    expect(bare!.wall).toBe('2027-08-31T09:00')
    const leap = dayNumber('2028-02-29')
    expect(dateText(dayRule('FREQ=YEARLY', 'UTC').next(leap, leap)!)).toBe('2029-02-28')
  })

  it('hands any other rule to the package', () => {
    const days = dayRule('FREQ=YEARLY;BYMONTH=10;BYDAY=-1FR;COUNT=3', 'America/New_York')
    const start = dayNumber('2026-10-30')
    expect(dateText(days.next(start, start)!)).toBe('2027-10-29')
    expect(dateText(days.next(start, dayNumber('2028-01-01'))!)).toBe('2028-10-27')
    expect(days.next(start, dayNumber('2028-10-27'))).toBeNull()
  })

  it('lets the day of an UNTIL count', () => {
    const start = dayNumber('2026-01-05')
    const days = dayRule('FREQ=WEEKLY;UNTIL=20260119T080000Z', 'America/New_York')
    expect(dateText(days.next(start, start + 7)!)).toBe('2026-01-19')
    expect(days.next(start, start + 14)).toBeNull()
  })

  it('refuses rules within a day', () => {
    expect(() => dayRule('FREQ=HOURLY', 'UTC')).toThrow(expect.objectContaining({ code: 'rule-too-fine' }))
  })
})
