import { describe, expect, test } from 'vitest'
import { weekNumber, weekStart } from '../../../main/domain/calendar/index.ts'

describe('the week a day lies in', () => {
  // 12 April 2026 is a Sunday.
  test.each([
    ['2026-04-15', 1, '2026-04-13'],
    ['2026-04-13', 1, '2026-04-13'],
    ['2026-04-12', 1, '2026-04-06'],
    ['2026-04-15', 7, '2026-04-12'],
    ['2026-04-12', 7, '2026-04-12'],
    ['2026-04-11', 7, '2026-04-05'],
    ['2026-04-15', 6, '2026-04-11'],
    ['2026-04-10', 6, '2026-04-04'],
    ['2026-01-01', 7, '2025-12-28'],
  ])('%s, weeks beginning on weekday %i: from %s on', (date, begins, first) => {
    expect(weekStart(date, begins)).toBe(first)
  })
})

describe('the number of a week', () => {
  test.each([
    // ISO 8601: week 1 of 2026 begins on 29 December 2025, and 2026 has 53 weeks.
    ['2025-12-29', 1],
    ['2026-04-13', 16],
    ['2026-12-28', 53],
    ['2027-01-04', 1],
  ])('from Monday %s on: %i', (beginsOn, number) => {
    expect(weekNumber(beginsOn)).toBe(number)
  })

  test.each([
    // Counted on a calendar: 1 January 2026 is a Thursday, 1 January 2027 a Friday.
    ['2025-12-28', 1],
    ['2026-01-04', 2],
    ['2026-04-12', 16],
    ['2026-12-20', 52],
    ['2026-12-27', 1],
    ['2027-01-03', 2],
    // 1 January 2028 is a Saturday, alone in its week, and 31 December 2028 a Sunday.
    ['2028-12-24', 53],
    ['2028-12-31', 1],
  ])('from Sunday %s on: %i', (beginsOn, number) => {
    expect(weekNumber(beginsOn)).toBe(number)
  })
})
