import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clockChanges } from '../../../main/domain/calendar/clockChanges.ts'
import {
  atWall,
  crewSpans,
  dateOf,
  minutesIn,
  openSpans,
  type ShopCalendar,
  startOfDay,
  wallMinuteOf,
  zonedOf,
} from '../../../main/domain/calendar/index.ts'

const zones = [
  'America/New_York',
  'Europe/Berlin',
  'Australia/Lord_Howe',
  'America/Santiago',
  'Asia/Kolkata',
  'UTC',
]

// Hours without overlap on a weekday: cut points taken in pairs.
const dayHours = fc
  .uniqueArray(fc.integer({ min: 0, max: 96 }), { maxLength: 6 })
  .map(cuts => cuts.sort((a, b) => a - b).map(cut => cut * 15))
  .map(cuts =>
    cuts.flatMap((from, i) => (i % 2 === 0 && cuts[i + 1] !== undefined ? [{ from, to: cuts[i + 1]! }] : [])),
  )
const weeks = fc
  .array(dayHours, { minLength: 7, maxLength: 7 })
  .map(days => days.flatMap((hours, i) => hours.map(span => ({ weekday: i + 1, ...span }))))
// From 2020 to 2030, at any minute.
const moments = fc.integer({ min: 26_297_280, max: 31_556_160 })

const isIn = (set: readonly { from: number; to: number }[], at: number) =>
  set.some(span => span.from <= at && at < span.to)

describe('openSpans', () => {
  it('is open exactly when the clock on the wall says so, away from the day of a clock change', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        weeks,
        dayHours,
        moments,
        fc.array(fc.integer({ min: 0, max: 20_000 }), { minLength: 20, maxLength: 20 }),
        (zone, weekly, special, from, probes) => {
          const date = dateOf(from + 3 * 1440, zone)
          const calendar: ShopCalendar = { zone, weekly, exceptions: [{ date, hours: special }] }
          const open = openSpans(calendar, from, from + 20_000)
          for (const probe of probes) {
            const at = from + probe
            const today = dateOf(at, zone)
            const day = startOfDay(today, zone)
            if (probe === 20_000 || clockChanges(zone, day, day + 1500).length > 0) continue
            const wall = wallMinuteOf(at, zone)
            const hours =
              today === date ? special : weekly.filter(h => h.weekday === zonedOf(at, zone).dayOfWeek)
            expect(isIn(open, at)).toBe(hours.some(h => h.from <= wall && wall < h.to))
          }
        },
      ),
    )
  })

  it('gives the same minutes asked at once or piece by piece, clock changes and all', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        weeks,
        moments,
        fc.integer({ min: 0, max: 300_000 }),
        (zone, weekly, from, cut) => {
          const calendar = { zone, weekly, exceptions: [] }
          const whole = openSpans(calendar, from, from + 300_000)
          const parts =
            minutesIn(openSpans(calendar, from, from + cut)) +
            minutesIn(openSpans(calendar, from + cut, from + 300_000))
          expect(parts).toBe(minutesIn(whole))
        },
      ),
      { numRuns: 50 },
    )
  })

  it('opens and closes on the clock-change day where the wall clock shows the hours', () => {
    fc.assert(
      fc.property(fc.constantFrom('2026-03-08', '2026-11-01'), dayHours, (date, hours) => {
        const zone = 'America/New_York'
        const weekly = hours.map(span => ({ weekday: 7, ...span }))
        const day = startOfDay(date, zone)
        const open = openSpans({ zone, weekly, exceptions: [] }, day, day + 1500)
        for (const span of hours.filter(({ from }) => from >= 180)) {
          expect(isIn(open, atWall(date, span.from, zone))).toBe(true)
          expect(isIn(open, atWall(date, span.to, zone) - 1)).toBe(true)
        }
      }),
    )
  })

  it('closes for a dated exception without hours, and joins midnight to midnight', () => {
    const zone = 'Europe/Berlin'
    const all = [1, 2, 3, 4, 5, 6, 7].map(weekday => ({ weekday, from: 0, to: 1440 }))
    const calendar = { zone, weekly: all, exceptions: [{ date: '2026-05-06', hours: [] }] }
    const from = startOfDay('2026-05-04', zone)
    expect(openSpans(calendar, from, from + 4 * 1440)).toEqual([
      { from, to: from + 2 * 1440 },
      { from: from + 3 * 1440, to: from + 4 * 1440 },
    ])
  })
})

describe('crew and bays', () => {
  const zone = 'UTC'
  const open = openSpans({ zone, weekly: [{ weekday: 1, from: 480, to: 1080 }], exceptions: [] }, 0, 20_000)
  // 5 January 1970 was a Monday: minute 5760.
  it('a person works in opening hours, in their own hours, and not when away', () => {
    expect(open).toEqual([
      { from: 5760 + 480, to: 5760 + 1080 },
      { from: 15_840 + 480, to: 15_840 + 1080 },
    ])
    const weekly = [{ weekday: 1, from: 360, to: 720 }]
    const absences = [
      { from: 5760 + 500, to: 5760 + 600 },
      { from: 5760 + 550, to: 5760 + 620 },
    ]
    expect(crewSpans(open, zone, { weekly, absences })).toEqual([
      { from: 6240, to: 6260 },
      { from: 6380, to: 6480 },
      { from: 16_320, to: 16_560 },
    ])
    expect(crewSpans(open, zone, { weekly: null, absences: [] })).toEqual(open)
    expect(crewSpans([], zone, { weekly, absences })).toEqual([])
  })
})
