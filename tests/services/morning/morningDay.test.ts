import { expect, it } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { type Day, daySays, isOn, isToday } from '../../../main/services/morning/morningDay.ts'

const zone = 'America/New_York'
const at = (date: string, hour = 0) => atWall(date, hour * 60, zone)
const day = {
  date: '2026-04-15',
  fromAt: at('2026-04-15'),
  toAt: at('2026-04-16'),
  floor: { zone, nowAt: at('2026-04-14', 9) },
} as Day

it('holds its own midnight, not the next', () => {
  expect([day.fromAt - 1, day.fromAt, day.toAt - 1, day.toAt].map(each => isOn(day, each))).toEqual([
    false,
    true,
    true,
    false,
  ])
})

it('says a time of the sheet’s day by the clock alone, though it is read the day before', () => {
  expect(daySays(day, at('2026-04-15', 14))).toBe('14:00')
  expect(daySays(day, at('2026-04-17', 8))).toBe('Friday 08:00')
})

it('knows today’s sheet from any other', () => {
  expect(isToday(day)).toBe(false)
  expect(isToday({ ...day, date: '2026-04-14' })).toBe(true)
})
