import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minuteOf } from '../../../../main/domain/calendar/index.ts'
import {
  firstOccurrences,
  occurrencesBetween,
} from '../../../../main/domain/upkeep/recurrence/occurrences.ts'

const utc = (text: string) => minuteOf(Temporal.Instant.from(text))

describe('occurrences', () => {
  it('keeps the wall time across every clock change of ten years', () => {
    const zones = fc.constantFrom(
      'America/New_York',
      'Europe/Berlin',
      'Australia/Lord_Howe',
      'Pacific/Auckland',
    )
    const minute = fc.integer({ min: 0, max: 1439 })
    fc.assert(
      fc.property(zones, minute, fc.integer({ min: 1, max: 40 }), (zone, minuteOfDay, interval) => {
        const time = new Temporal.PlainTime(Math.floor(minuteOfDay / 60), minuteOfDay % 60)
        const start = Temporal.PlainDateTime.from(`2026-01-05T${time.toString({ smallestUnit: 'minute' })}`)
        const found = firstOccurrences(
          { rule: `FREQ=DAILY;INTERVAL=${interval};COUNT=100`, start: start.toString(), zone },
          100,
        )
        found.forEach(({ wall, at }, n) => {
          const expected = start.add({ days: n * interval })
          expect(wall).toBe(expected.toString({ smallestUnit: 'minute' }))
          expect(at).toBe(minuteOf(expected.toZonedDateTime(zone)))
        })
        expect(found).toHaveLength(100)
      }),
      { numRuns: 40 },
    )
  })

  it('ends at an UNTIL in UTC on the very minute, also in the hour that comes twice', () => {
    // 01:30 in New York on 1 November 2026 comes first at 05:30Z (RFC 5545 section 3.3.5: the first is meant).
    const recurrence = { start: '2026-10-30T01:30', zone: 'America/New_York' }
    const days = (until: string) =>
      firstOccurrences({ ...recurrence, rule: `FREQ=DAILY;UNTIL=${until}` }, 9).map(({ wall }) =>
        wall.slice(8, 10),
      )
    expect(days('20261101T053000Z')).toEqual(['30', '31', '01'])
    expect(days('20261101T052959Z')).toEqual(['30', '31'])
    expect(days('20261102T062959Z')).toEqual(['30', '31', '01'])
    expect(days('20261102T063000Z')).toEqual(['30', '31', '01', '02'])
  })

  it('counts a bare date in UNTIL as that whole day, and a time without Z as wall time', () => {
    const recurrence = { start: '2026-06-01T18:00', zone: 'Pacific/Auckland' }
    const count = (until: string) =>
      firstOccurrences({ ...recurrence, rule: `FREQ=DAILY;UNTIL=${until}` }, 9).length
    expect(count('20260603')).toBe(3)
    expect(count('20260603T180000')).toBe(3)
    expect(count('20260603T175900')).toBe(2)
  })

  it('counts two wall times that the skipped hour makes one', () => {
    // Berlin, 29 March 2026: 02:00 does not exist and is taken for 03:00, which is there already.
    const found = firstOccurrences(
      { rule: 'FREQ=HOURLY;COUNT=4', start: '2026-03-29T01:00', zone: 'Europe/Berlin' },
      9,
    )
    expect(found.map(({ at }) => at)).toEqual([
      utc('2026-03-29T00:00Z'),
      utc('2026-03-29T01:00Z'),
      utc('2026-03-29T02:00Z'),
    ])
  })

  it('gives added dates in their place, also after the last of the rule, and never a date left out', () => {
    const found = firstOccurrences(
      {
        rule: 'FREQ=WEEKLY;COUNT=2',
        start: '2026-03-02T09:00',
        zone: 'UTC',
        except: ['2026-03-09T09:00', '2026-03-20T09:00'],
        extra: ['2026-03-20T09:00', '2026-04-01T09:00', '2026-03-02T09:00', '2026-02-01T09:00'],
      },
      9,
    )
    expect(found.map(({ wall }) => wall.slice(0, 10))).toEqual(['2026-02-01', '2026-03-02', '2026-04-01'])
  })

  it('finds those between two minutes, the first counting and the last not', () => {
    const recurrence = { rule: 'FREQ=WEEKLY', start: '2026-03-02T09:00', zone: 'America/New_York' }
    const found = occurrencesBetween(recurrence, utc('2026-03-09T13:00Z'), utc('2026-03-23T13:00Z'))
    expect(found.map(({ wall }) => wall)).toEqual(['2026-03-09T09:00', '2026-03-16T09:00'])
  })

  it.each([
    ['', 'NAME=VALUE'],
    ['INTERVAL=2', 'FREQ is missing'],
    ['FREQ=FORTNIGHTLY', 'is none of'],
    ['FREQ=DAILY;INTERVAL=0', 'whole number'],
    ['FREQ=DAILY;COUNT=2;UNTIL=20261231', 'exclude'],
    ['FREQ=DAILY;COUNT=2;COUNT=3', 'twice'],
    ['FREQ=DAILY;BYMOON=1', 'no part of a rule'],
    ['FREQ=MONTHLY;BYMONTHDAY=32', '1 to 31'],
    ['FREQ=MONTHLY;BYMONTHDAY=0', '1 to 31'],
    ['FREQ=YEARLY;BYMONTH=-1', '1 to 12'],
    ['FREQ=WEEKLY;BYDAY=XX', 'no weekday'],
    ['FREQ=WEEKLY;BYDAY=1MO', 'MONTHLY or YEARLY'],
    ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=1MO', 'BYWEEKNO'],
    ['FREQ=WEEKLY;BYMONTHDAY=3', 'WEEKLY'],
    ['FREQ=MONTHLY;BYYEARDAY=3', 'BYYEARDAY'],
    ['FREQ=MONTHLY;BYWEEKNO=3', 'FREQ=YEARLY'],
    ['FREQ=MONTHLY;BYSETPOS=1', 'another BY part'],
    ['FREQ=DAILY;UNTIL=tomorrow', 'neither'],
    ['FREQ=DAILY;UNTIL=20261341', 'no date'],
    ['FREQ=DAILY;WKST=Monday', 'WKST'],
  ])('refuses the rule "%s"', (rule, words) => {
    const attempt = () => firstOccurrences({ rule, start: '2026-01-01T09:00', zone: 'UTC' }, 1)
    expect(attempt).toThrow(expect.objectContaining({ code: 'rule-bad', field: 'rule' }))
    expect(attempt).toThrow(words)
  })

  it('refuses a start that is no time', () => {
    expect(() => firstOccurrences({ rule: 'FREQ=DAILY', start: '2026-02-30T09:00', zone: 'UTC' }, 1)).toThrow(
      expect.objectContaining({ field: 'start' }),
    )
  })
})
