import { expect, it } from 'vitest'
import { daysFrom } from '../../../main/services/upkeep/layers.ts'

it('counts days of the calendar, over months, a leap day and the nights the clocks change', () => {
  expect(daysFrom('2026-04-15', '2026-04-15')).toBe(0)
  expect(daysFrom('2026-03-07', '2026-03-09')).toBe(2)
  expect(daysFrom('2028-02-28', '2028-03-01')).toBe(2)
  expect(daysFrom('2026-01-01', '2027-01-01')).toBe(365)
  expect(daysFrom('2026-04-16', '2026-04-15')).toBe(-1)
})
