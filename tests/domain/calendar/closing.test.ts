import { describe, expect, it } from 'vitest'
import { closingFrom, type ShopCalendar } from '../../../main/domain/calendar/index.ts'
import { instantOf } from '../../../main/domain/calendar/instants.ts'

/** Monday to Friday in two halves, Saturday mornings; shut on Monday 20 April, and late on Friday 17 April 2026. */
const shop: ShopCalendar = {
  zone: 'America/New_York',
  weekly: [
    ...[1, 2, 3, 4, 5].flatMap(weekday => [
      { weekday, from: 780, to: 1080 },
      { weekday, from: 480, to: 720 },
    ]),
    { weekday: 6, from: 540, to: 780 },
  ],
  exceptions: [
    { date: '2026-04-20', hours: [] },
    { date: '2026-04-17', hours: [{ from: 480, to: 1440 }] },
  ],
}

const closing = (date: string, calendar = shop) => {
  const at = closingFrom(calendar, date)
  return at === null ? null : instantOf(at).toString()
}

describe('the closing time from a day on', () => {
  it('is the end of the day’s last opening, on a short day too', () => {
    expect(closing('2026-04-16')).toBe('2026-04-16T22:00:00Z')
    expect(closing('2026-04-18')).toBe('2026-04-18T17:00:00Z')
  })

  it('is midnight where the shop stays open until then', () => {
    expect(closing('2026-04-17')).toBe('2026-04-18T04:00:00Z')
  })

  it('passes over a Sunday and a day shut by exception', () => {
    expect(closing('2026-04-19')).toBe('2026-04-21T22:00:00Z')
  })

  it('follows the clock change', () => {
    expect(closing('2026-03-06')).toBe('2026-03-06T23:00:00Z')
    expect(closing('2026-03-08')).toBe('2026-03-09T22:00:00Z')
  })

  it('is none for a shop that does not open', () => {
    expect(closing('2026-04-16', { ...shop, weekly: [] })).toBe('2026-04-18T04:00:00Z')
    expect(closing('2026-04-18', { ...shop, weekly: [] })).toBeNull()
  })
})
