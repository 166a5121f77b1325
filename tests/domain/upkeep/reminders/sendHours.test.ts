import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkSendHours, nextSendAt } from '../../../../main/domain/upkeep/reminders/sendHours.ts'
import { NOW, RULES, utc } from './arbitraries.ts'

const zones = ['America/New_York', 'Europe/Berlin', 'Pacific/Auckland', 'Australia/Lord_Howe', 'Africa/Cairo']

describe('sending hours', () => {
  it('give the first minute that is one, as a search minute by minute finds it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: NOW, max: NOW + 500_000 }),
        fc.integer({ min: 0, max: 1430 }),
        fc.integer({ min: 1, max: 600 }),
        (zone, at, fromMin, length) => {
          const hours = { ...RULES.hours, fromMin, toMin: Math.min(1440, fromMin + length) }
          const found = nextSendAt(at, hours, zone)!
          const open = (minute: number) => {
            const local = Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toZonedDateTimeISO(zone)
            const wall = local.hour * 60 + local.minute
            const closed = local.dayOfWeek === 7 || local.toPlainDate().toString() === '2026-12-25'
            return wall >= hours.fromMin && wall < hours.toMin && !closed
          }
          let minute = at
          while (!open(minute)) minute++
          expect(found).toBe(minute)
          expect(nextSendAt(found, hours, zone)).toBe(found)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('go by what the clock shows on the nights it changes', () => {
    // New York, 1 November 2026: 01:00 to 01:59 is shown twice, from 05:00Z and from 06:00Z.
    const hours = { ...RULES.hours, fromMin: 90, toMin: 120, closedWeekdays: [] }
    const next = (text: string) => nextSendAt(utc(text), hours, 'America/New_York')
    expect(next('2026-11-01T05:00Z')).toBe(utc('2026-11-01T05:30Z'))
    expect(next('2026-11-01T06:05Z')).toBe(utc('2026-11-01T06:30Z'))
    // 14 March 2027: 02:00 to 02:59 is not shown at all.
    const skipped = { ...RULES.hours, fromMin: 120, toMin: 180, closedWeekdays: [] }
    expect(nextSendAt(utc('2027-03-14T06:00Z'), skipped, 'America/New_York')).toBe(utc('2027-03-15T06:00Z'))
  })

  it('pass over closed dates and weekdays', () => {
    const hours = { ...RULES.hours, closedWeekdays: [6, 7], closedDates: ['2026-04-20', '2026-04-21'] }
    expect(nextSendAt(utc('2026-04-17T23:59Z'), hours, 'America/New_York')).toBe(utc('2026-04-17T23:59Z'))
    expect(nextSendAt(utc('2026-04-18T00:00Z'), hours, 'America/New_York')).toBe(utc('2026-04-22T13:00Z'))
  })

  it('are never, where the next two years are closed', () => {
    const start = Temporal.PlainDate.from('2026-04-14')
    const closedDates = Array.from({ length: 740 }, (_, n) => start.add({ days: n }).toString())
    expect(nextSendAt(NOW, { ...RULES.hours, closedDates }, 'America/New_York')).toBeNull()
  })

  it.each([
    [{ fromMin: -1 }, 'fromMin'],
    [{ toMin: 1441 }, 'toMin'],
    [{ fromMin: 600, toMin: 600 }, 'toMin'],
    [{ closedWeekdays: [0] }, 'closedWeekdays.0'],
    [{ closedWeekdays: [1, 2, 3, 4, 5, 6, 7] }, 'closedWeekdays'],
    [{ closedDates: ['2026-02-30'] }, 'closedDates.0'],
  ])('refuse %j', (change, field) => {
    expect(() => checkSendHours({ ...RULES.hours, ...change })).toThrow(expect.objectContaining({ field }))
    checkSendHours(RULES.hours)
  })
})
