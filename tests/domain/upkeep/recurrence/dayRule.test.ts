import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { civilDate, dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { dayRule } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'
import { daysOf, rfcDaysOf } from './days.ts'

const aDay = fc.integer({ min: dayNumber('1970-01-01'), max: dayNumber('2150-12-31') })

describe('a rule read as days', () => {
  const frequency = fc.constantFrom('DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY')
  const interval = fc.integer({ min: 1, max: 30 })

  /** The RFC rule that says what a plain one means here: the month's last day where its own is missing. */
  function writtenOut(rule: string, start: number): string {
    const { month, day } = civilDate(start)
    if (day <= 28) return rule
    const lastOf = `BYMONTHDAY=${Array.from({ length: day - 27 }, (_, i) => 28 + i).join(',')};BYSETPOS=-1`
    if (rule.includes('MONTHLY')) return `${rule};${lastOf}`
    return rule.includes('YEARLY') && month === 2 ? `${rule};BYMONTH=2;${lastOf}` : rule
  }

  it('counts a plain rule to the days of the RFC rule it is written out as', () => {
    const count = fc.option(fc.integer({ min: 1, max: 8 }))
    fc.assert(
      fc.property(frequency, interval, aDay, count, (freq, every, start, visits) => {
        const step = freq === 'YEARLY' ? Math.min(every, 20) : every
        const rule = `FREQ=${freq};INTERVAL=${step}${visits === null ? '' : `;COUNT=${visits}`}`
        const date = dateOfDay(start)
        expect(daysOf(rule, date, 8, 'UTC', '2999-01-01')).toEqual(
          rfcDaysOf(writtenOut(rule, start), date, 8, 'UTC', '2999-01-01'),
        )
      }),
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
          const days = dayRule(`FREQ=${freq};INTERVAL=${Math.min(every, 20)}`, 'UTC')
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
    expect(dateOfDay(dayRule('FREQ=MONTHLY;INTERVAL=6', 'UTC').next(start, start)!)).toBe('2027-02-28')
    expect(rfcDaysOf('FREQ=MONTHLY;INTERVAL=6', '2026-08-31', 2)[1]).toBe('2027-08-31')
    const leap = dayNumber('2028-02-29')
    expect(dateOfDay(dayRule('FREQ=YEARLY', 'UTC').next(leap, leap)!)).toBe('2029-02-28')
  })

  it('goes on from any day, and ends after its last', () => {
    const days = dayRule('FREQ=YEARLY;BYMONTH=10;BYDAY=-1FR;COUNT=3', 'America/New_York')
    const start = dayNumber('2026-10-30')
    expect(dateOfDay(days.next(start, start)!)).toBe('2027-10-29')
    expect(dateOfDay(days.next(start, dayNumber('2028-01-01'))!)).toBe('2028-10-27')
    expect(days.next(start, dayNumber('2028-10-27'))).toBeNull()
  })

  it.each([
    ['20260119T080000Z', 'America/New_York', '2026-01-19'],
    ['20260119T045959Z', 'America/New_York', '2026-01-18'],
    ['20260119T050000Z', 'America/New_York', '2026-01-19'],
    ['20260118T110000Z', 'Pacific/Auckland', '2026-01-19'],
    ['20260119T000000', 'America/New_York', '2026-01-19'],
    ['20260119', 'Pacific/Auckland', '2026-01-19'],
  ])('lets the day of UNTIL=%s in %s count as the last', (until, zone, last) => {
    expect(daysOf(`FREQ=DAILY;UNTIL=${until}`, '2026-01-15', 99, zone).at(-1)).toBe(last)
  })

  it('finds the next of a rule from 1970 at once, and a leap Monday 28 years on', () => {
    const old = dayNumber('1970-01-01')
    const days = dayRule('FREQ=WEEKLY;BYDAY=MO,TU', 'UTC')
    expect(dateOfDay(days.next(old, dayNumber('2026-11-28'))!)).toBe('2026-11-30')
    const leap = 'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29;BYDAY=MO'
    expect(daysOf(leap, '2016-02-29', 3)).toEqual(['2016-02-29', '2044-02-29', '2072-02-29'])
  })

  it.each([
    'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
    'FREQ=YEARLY;BYMONTH=4;BYMONTHDAY=31',
    'FREQ=YEARLY;BYYEARDAY=1;BYMONTH=2',
    'FREQ=MONTHLY;BYDAY=1MO;BYMONTHDAY=8',
    'FREQ=DAILY;INTERVAL=7;BYDAY=FR',
    'FREQ=DAILY;UNTIL=20200101',
  ])('%s names no day', rule => {
    // 29 November 2026 is a Sunday.
    expect(daysOf(rule, '2026-11-29', 1)).toEqual([])
  })

  it('refuses an UNTIL that is no date', () => {
    expect(() => dayRule('FREQ=DAILY;UNTIL=20261341', 'UTC')).toThrow('no date')
  })
})
