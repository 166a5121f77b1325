// RFC 5545 section 3.3.10, by two readers that share nothing with ours: `ical.js`, and the text asked day by day.
import fc from 'fast-check'
import ICAL from 'ical.js'
import { expect, it } from 'vitest'
import { cases } from '../../cases.ts'
import { daysByDefinition } from './byDefinition.ts'
import { rfcDaysOf } from './days.ts'
import { everyRule, icalRule, startDay } from './randomRules.ts'

const lastOn = (start: string, years: number) => Temporal.PlainDate.from(start).add({ years }).toString()

function daysByIcal(rule: string, start: string, last: string, most: number): string[] {
  const walk = ICAL.Recur.fromString(rule).iterator(ICAL.Time.fromDateString(start))
  const found: string[] = []
  while (found.length < most) {
    const date = walk.next()?.toString()
    if (date === undefined || date > last) break
    found.push(date)
  }
  return found
}

it('names the days `ical.js` names, for 2,000 rules', () => {
  let compared = 0
  fc.assert(
    fc.property(icalRule, startDay, (rule, asked) => {
      // It takes a start the rule does not name for the first day; RFC 5545 section 3.8.5.3 leaves that undefined.
      const [start] = rfcDaysOf(rule, asked, 1)
      if (start === undefined) return
      const last = lastOn(start, 12)
      expect(rfcDaysOf(rule, start, 12, 'UTC', last)).toEqual(daysByIcal(rule, start, last, 12))
      compared++
    }),
    { numRuns: cases(2100) },
  )
  expect(compared).toBeGreaterThanOrEqual(cases(2000))
})

it('names the days the text of the RFC names, for rules with every part', () => {
  let withDays = 0
  fc.assert(
    fc.property(everyRule, startDay, (rule, start) => {
      const last = lastOn(start, 3)
      const named = daysByDefinition(rule, start, last)
      expect(rfcDaysOf(rule, start, 2000, 'UTC', last)).toEqual(named)
      if (named.length > 0) withDays++
    }),
    { numRuns: cases(400) },
  )
  expect(withDays).toBeGreaterThan(cases(150))
})

// Mixed weekdays are a union: dates counted off on a wall calendar of 2026.
it.each([
  [
    'FREQ=MONTHLY;BYDAY=1MO,FR',
    '2026-11-01',
    ['2026-11-02', '2026-11-06', '2026-11-13', '2026-11-20', '2026-11-27', '2026-12-04', '2026-12-07'],
  ],
  [
    'FREQ=MONTHLY;BYDAY=3TU,TU',
    '2026-11-01',
    ['2026-11-03', '2026-11-10', '2026-11-17', '2026-11-24', '2026-12-01'],
  ],
  [
    'FREQ=YEARLY;BYMONTH=10;BYDAY=-1FR,MO',
    '2026-10-01',
    ['2026-10-05', '2026-10-12', '2026-10-19', '2026-10-26', '2026-10-30', '2027-10-04'],
  ],
])('%s', (rule, start, days) => {
  expect(rfcDaysOf(rule, start, days.length)).toEqual(days)
})
