/** Holds and openings over the nights on which the clock changes (IANA time zone database: the dates below). */
import { describe, expect, it } from 'vitest'
import {
  atWall,
  dayLength,
  firstOpenAt,
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

describe('the overnight cure (hours 08:00 to 18:00, a hold of 12 h)', () => {
  const zone = 'America/New_York'
  const open = openSpans(
    everyDay(zone, 480, 1080),
    startOfDay('2026-05-04', zone),
    startOfDay('2026-05-08', zone),
  )
  it.each([
    ['17:30', 17 * 60 + 30, 30],
    ['09:00', 9 * 60, 9 * 60],
  ])('a coat finished at %s blocks its open minutes only', (_, wall, blocked) => {
    const coatEndAt = atWall('2026-05-05', wall, zone)
    expect(openMinutesBetween(open, coatEndAt, coatEndAt + 720)).toBe(blocked)
  })
})

describe('wall times that do not exist or occur twice', () => {
  it('follows RFC 5545 section 3.3.5: 02:30 on 8 March 2026 is 03:30, 01:30 on 1 November the first one', () => {
    const zone = 'America/New_York'
    expect(atWall('2026-03-08', 150, zone)).toBe(atWall('2026-03-08', 210, zone))
    expect(atWall('2026-11-01', 90, zone)).toBe(startOfDay('2026-11-01', zone) + 90)
  })
  it('drops an opening that lies in the skipped hour and keeps one around it', () => {
    const zone = 'Europe/Berlin'
    const day = startOfDay('2026-03-29', zone)
    const at = (from: number, to: number) => openSpans(everyDay(zone, from, to), day, day + 1380)
    expect(at(150, 180)).toEqual([])
    expect(minutesIn(at(90, 210))).toBe(60)
  })
  it('begins a day whose midnight is skipped at 01:00 (Santiago, 6 September 2026)', () => {
    const zone = 'America/Santiago'
    const day = startOfDay('2026-09-06', zone)
    expect(wallMinuteOf(day, zone)).toBe(60)
    expect(minutesIn(openSpans(everyDay(zone, 0, 1440), day, day + 1380))).toBe(1380)
    expect(openSpans(everyDay(zone, 480, 540), day, day + 1380)).toEqual([{ from: day + 420, to: day + 480 }])
  })
  it('has no hours on the date Apia left out (30 December 2011)', () => {
    const zone = 'Pacific/Apia'
    expect(dayLength('2011-12-30', zone)).toBe(0)
    const week = openSpans(
      everyDay(zone, 480, 1080),
      startOfDay('2011-12-29', zone),
      startOfDay('2012-01-01', zone),
    )
    expect(minutesIn(week)).toBe(1200)
  })
})
