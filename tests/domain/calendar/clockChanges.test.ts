/** Holds and openings over the nights on which the clock changes (IANA time zone database: the dates below). */
import { describe, expect, it } from 'vitest'
import { clockChanges } from '../../../main/domain/calendar/clockChanges.ts'
import {
  atWall,
  dayLength,
  firstOpenAt,
  minuteOf,
  minutesIn,
  openMinutesBetween,
  openSpans,
  type ShopCalendar,
  startOfDay,
  wallMinuteOf,
} from '../../../main/domain/calendar/index.ts'
import { endOfWork, openTime } from '../../../main/domain/schedule/openTime.ts'

const everyDay = (zone: string, from: number, to: number): ShopCalendar => ({
  zone,
  weekly: [1, 2, 3, 4, 5, 6, 7].map(weekday => ({ weekday, from, to })),
  exceptions: [],
})

// zone, the evening before, the night's date, how many minutes the clock takes from the night (or gives: negative)
const nights = [
  ['America/New_York', '2026-03-07', '2026-03-08', 60],
  ['America/New_York', '2026-10-31', '2026-11-01', -60],
  ['America/New_York', '2027-03-13', '2027-03-14', 60],
  ['America/New_York', '2027-11-06', '2027-11-07', -60],
  ['Europe/Berlin', '2026-03-28', '2026-03-29', 60],
  ['Europe/Berlin', '2026-10-24', '2026-10-25', -60],
  ['Europe/Berlin', '2027-03-27', '2027-03-28', 60],
  ['Europe/Berlin', '2027-10-30', '2027-10-31', -60],
] as const

describe.each(nights)('%s, the night from %s to %s', (zone, evening, morning, skipped) => {
  const coatEndAt = atWall(evening, 17 * 60 + 30, zone)
  const open = openSpans(everyDay(zone, 480, 1080), coatEndAt - 3000, coatEndAt + 6000)

  it('a hold lasts its elapsed hours, whatever the clock on the wall says', () => {
    const releaseAt = coatEndAt + 12 * 60
    expect(wallMinuteOf(releaseAt, zone)).toBe(5 * 60 + 30 + skipped)
    expect(openMinutesBetween(open, coatEndAt, releaseAt)).toBe(30)
  })

  it('a hold that outlasts the closing blocks the same open minutes as on any night, the clock change apart', () => {
    // 15 h from 17:30: 08:30 on an even night, half an hour of it open.
    const releaseAt = coatEndAt + 15 * 60
    expect(openMinutesBetween(open, coatEndAt, releaseAt)).toBe(30 + Math.max(0, 30 + skipped))
  })

  it('opens and closes by the clock on the wall', () => {
    const opensAt = firstOpenAt(open, startOfDay(morning, zone))!
    expect(wallMinuteOf(opensAt, zone)).toBe(480)
    expect(opensAt - atWall(evening, 1080, zone)).toBe(14 * 60 - skipped)
    expect(dayLength(morning, zone)).toBe(1440 - skipped)
  })

  it('a shop open through the night works an hour less, or more', () => {
    const night = openSpans(everyDay(zone, 0, 360), startOfDay(morning, zone), atWall(morning, 720, zone))
    expect(minutesIn(night)).toBe(360 - skipped)
    const around = openSpans(everyDay(zone, 0, 1440), coatEndAt, coatEndAt + 3000)
    expect(around).toEqual([{ from: coatEndAt, to: coatEndAt + 3000 }])
  })

  it('splittable work goes on in the morning, by open minutes', () => {
    expect(endOfWork(openTime(open), coatEndAt, 90)).toBe(atWall(morning, 540, zone))
  })
})

describe('clock changes', () => {
  it('are those at or after the first minute and before the last', () => {
    // 8 March 2026, 07:00 UTC (IANA time zone database).
    const change = minuteOf(Temporal.Instant.from('2026-03-08T07:00Z'))
    const found = (from: number, to: number) => clockChanges('America/New_York', from, to).map(({ at }) => at)
    expect(found(change, change + 1)).toEqual([change])
    expect(found(change - 10, change)).toEqual([])
    expect(found(change + 1, change + 10)).toEqual([])
  })
})
