/**
 * Published values: the IANA time zone database's clock changes, ISO 8601 weeks, RFC 5545 durations. Each case in the
 * two files names its source and how the number came about.
 */
import { describe, expect, it } from 'vitest'
import { clockChanges } from '../../../main/domain/calendar/clockChanges.ts'
import { isoWeek } from '../../../main/domain/calendar/days.ts'
import {
  addDays,
  atWall,
  dayLength,
  openMinutesBetween,
  openSpans,
  startOfDay,
  zonedOf,
} from '../../../main/domain/calendar/index.ts'
import { instantOf } from '../../../main/domain/calendar/instants.ts'
import first from '../../reference/calendar.json' with { type: 'json' }
import second from '../../reference/sourced/calendar.json' with { type: 'json' }

interface Case {
  id: string
  // biome-ignore lint/suspicious/noExplicitAny: every kind of case has its own shape
  input: any
  // biome-ignore lint/suspicious/noExplicitAny: see above
  expected: any
}

const at = (wall: string, zone: string) => {
  const [date, time] = wall.split('T') as [string, string]
  const [hour, minute] = time.split(':').map(Number) as [number, number]
  return atWall(date, hour * 60 + minute, zone)
}
const wall = (minute: number, zone: string) => zonedOf(minute, zone).toPlainDateTime()
const local = (minute: number, zone: string) => wall(minute, zone).toString({ smallestUnit: 'minute' })

const kinds: Record<string, (input: Case['input']) => unknown> = {
  transitions: ({ zone, year }) => ({
    transitions: clockChanges(
      zone,
      startOfDay(`${year}-01-01`, zone),
      startOfDay(`${year + 1}-01-01`, zone),
    ).map(change => ({
      utc: instantOf(change.at).toString({ smallestUnit: 'minute' }),
      offsetBeforeMin: change.offsetBeforeMin,
      offsetAfterMin: change.offsetAfterMin,
      localBefore: local(change.at - 1, zone),
      localAfter: local(change.at, zone),
    })),
  }),
  'elapsed-and-wall': ({ zone, from, to }) => ({
    elapsedMinutes: at(to, zone) - at(from, zone),
    wallMinutes: wall(at(from, zone), zone)
      .until(wall(at(to, zone), zone))
      .total('minutes'),
  }),
  'hold-end': ({ zone, from, elapsedHours }) => ({
    endLocal: local(at(from, zone) + elapsedHours * 60, zone),
  }),
  'nominal-days': ({ zone, from, days }) => {
    const start = at(from, zone)
    const end = addDays(start, days, zone)
    return { toLocal: local(end, zone), elapsedMinutes: end - start }
  },
  'day-length': ({ zone, date }) => ({ minutes: dayLength(date, zone) }),
  'iso-week': ({ date }) => isoWeek(date),
  'weeks-in-year': ({ isoYear }) => ({
    // The last week is the one 28 December lies in (ISO 8601).
    weeks: isoWeek(`${isoYear}-12-28`).isoWeek,
  }),
  'open-minutes': ({ zone, hours, from, to }) => {
    expect(hours).toBe('Mon-Fri 08:00-18:00')
    const weekly = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 }))
    const open = openSpans({ zone, weekly, exceptions: [] }, at(from, zone) - 5000, at(to, zone) + 5000)
    return { openMinutes: openMinutesBetween(open, at(from, zone), at(to, zone)) }
  },
}

const kindOf = (given: Case & { kind?: string }) =>
  given.kind ??
  { tra: 'transitions', hol: 'hold-end', iso: 'iso-week', ope: 'open-minutes' }[given.id.slice(0, 3)]!

describe.each([
  ['calendar.json', first.cases as Case[], 29],
  ['sourced/calendar.json', second.cases as Case[], 37],
])('%s', (_, cases, count) => {
  it('is whole', () => expect(cases).toHaveLength(count))

  it.each(cases.map(given => [given.id, given] as const))('%s', (_, given) => {
    // The first file gives no wall times beside a change; arrays must still be of one length.
    expect(kinds[kindOf(given)]!(given.input)).toMatchObject(given.expected)
  })
})
