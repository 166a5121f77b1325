import { expect, it } from 'vitest'
import { atWall, dayNumber } from '../../../main/domain/calendar/index.ts'
import { shopDays } from '../../../main/services/shelf/shopDays.ts'

const zone = 'America/New_York'
const monday = dayNumber('2026-04-13')

/** Open Monday to Friday, but for the Wednesday; and on the Saturday. */
const days = shopDays(
  {
    zone,
    weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 })),
    exceptions: [
      { date: '2026-04-15', hours: [] },
      { date: '2026-04-18', hours: [{ from: 480, to: 720 }] },
    ],
  },
  monday,
  monday + 6,
)

it('opens by its exceptions before its week', () => {
  expect(Array.from({ length: 7 }, (_, i) => days.open(monday + i))).toEqual([
    true,
    true,
    false,
    true,
    true,
    true,
    false,
  ])
})

it('counts the open days before a day, and stops at its ends', () => {
  expect([0, 1, 2, 3, 6, 7].map(i => days.openBefore(monday + i))).toEqual([0, 1, 2, 2, 5, 5])
  expect([days.openBefore(monday - 9), days.openBefore(monday + 90)]).toEqual([0, 5])
})

it('finds the day of a minute by the shop’s midnight', () => {
  expect(days.dayOf(atWall('2026-04-14', 0, zone))).toBe(monday + 1)
  expect(days.dayOf(atWall('2026-04-14', 0, zone) - 1)).toBe(monday)
  expect(days.dayOf(atWall('2026-03-01', 0, zone))).toBe(monday)
})

it('has as many open days a year as its ordinary week', () => {
  expect(days.openPerYear).toBe(261)
})
