// RFC 5545 section 3.8.5.3 (its examples), 3.3.10 and 3.3.5; clock changes: IANA time zone database.
import { expect, it } from 'vitest'
import { atWall, minuteOf } from '../../../../main/domain/calendar/index.ts'
import { instantOf } from '../../../../main/domain/calendar/instants.ts'
import { dayRule } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'
import { type Case, casesOf, runCases, setAside } from '../../../reference/cases.ts'
import { rfcDaysOf } from './days.ts'

const firstSet = [
  [/^wall-time-/, 'wall-time'],
  [/./, 'first-occurrences'],
] as const

interface RuleInput {
  zone: string
  start: string
  rule: string
  first?: number
  exdate?: string
  exdates?: string[]
  rdates?: string[]
}

/** Visits are days: what repeats within one is refused, and that is what these cases are held against. */
const WITHIN_A_DAY = /HOURLY|MINUTELY|BYHOUR|BYMINUTE/

/**
 * As many as expected, and one more, which must not come where the list is complete: wall times of the start's hour.
 * Dates left out are the visits skipped and dates added no part of a rule, and an UNTIL lets the whole of its day count;
 * the three are laid over the rule's days here.
 */
function wallTimes({ zone, start, rule, exdate, exdates, rdates }: RuleInput, count: number): string[] {
  const left = exdates ?? (exdate ? [exdate] : [])
  const until = /UNTIL=(\d{4})(\d\d)(\d\dT\d\d)(\d\d)(\d\dZ)/.exec(rule)
  const lastAt = until
    ? minuteOf(Temporal.Instant.from(`${until[1]}-${until[2]}-${until[3]}:${until[4]}:${until[5]}`))
    : Number.POSITIVE_INFINITY
  const named = rfcDaysOf(rule, start.slice(0, 10), count + left.length, zone)
    .map(date => `${date}T${start.slice(11, 16)}`)
    .filter(wall => minuteIn(wall, zone) <= lastAt)
  return [...named, ...(rdates ?? [])]
    .filter(time => !left.includes(time))
    .sort()
    .slice(0, count)
}

function minuteIn(wall: string, zone: string): number {
  return atWall(wall.slice(0, 10), Number(wall.slice(11, 13)) * 60 + Number(wall.slice(14, 16)), zone)
}

const utcText = (at: number) => instantOf(at).toString({ smallestUnit: 'minute' })

/** The dates on which the zone's letters change along a list of occurrences, as the RFC prints them. */
function abbreviations(zone: string, walls: readonly string[]): [string, string][] {
  const changes: [string, string][] = []
  for (const wall of walls) {
    const time = instantOf(minuteIn(wall, zone)).toZonedDateTimeISO(zone)
    const letters = time.toLocaleString('en-US', { timeZoneName: 'short' }).split(' ').at(-1)!
    if (changes.at(-1)?.[1] !== letters) changes.push([wall.slice(0, 10), letters])
  }
  return changes
}

function refusesWithinADay({ rule, zone }: RuleInput, expected: object): boolean {
  if (!WITHIN_A_DAY.test(rule)) return false
  expect(() => dayRule(rule, zone)).toThrow(expect.objectContaining({ code: 'rule-too-fine' }))
  setAside(expected, 'a rule within a day is refused')
  return true
}

runCases('recurrence', firstSet, {
  'first-occurrences': ({ input, expected }: Case<RuleInput, { local: string[] }>) => {
    if (refusesWithinADay(input, expected)) return
    const ends = /COUNT|UNTIL/.test(input.rule) && expected.local.length < input.first!
    expect(wallTimes(input, ends ? input.first! : expected.local.length)).toEqual(expected.local)
  },

  'wall-time': ({ input, expected }: Case<RuleInput, { utc: string[] }>) => {
    const found = wallTimes(input, 99).map(wall => utcText(minuteIn(wall, input.zone)))
    expect(found).toEqual(expected.utc)
  },

  'rfc-example': ({
    input,
    expected,
  }: Case<
    RuleInput,
    { localDatesAt0900?: string[]; local?: string[]; abbreviation?: [string, string][]; complete: boolean }
  >) => {
    if (refusesWithinADay(input, expected)) return
    const local = expected.local ?? expected.localDatesAt0900!.map(date => `${date}T09:00`)
    const found = wallTimes(input, local.length + (expected.complete ? 1 : 0))
    expect(found).toEqual(local)
    if (expected.abbreviation) expect(abbreviations(input.zone, found)).toEqual(expected.abbreviation)
  },

  plan: ({ input, expected }: Case<RuleInput, { local: string[]; utc: string[]; complete: boolean }>) => {
    if (refusesWithinADay(input, expected)) return
    const found = wallTimes(input, expected.local.length + (expected.complete ? 1 : 0))
    expect(found).toEqual(expected.local)
    expect(found.map(wall => utcText(minuteIn(wall, input.zone)))).toEqual(expected.utc)
  },

  'local-to-utc': ({ input, expected }: Case<{ zone: string; local: string }, { utc: string }>) => {
    expect(minuteIn(input.local, input.zone)).toBe(minuteOf(Temporal.Instant.from(expected.utc)))
  },
})

it('reads 85 cases, of which those within a day are refused', () => {
  const cases = casesOf('recurrence', firstSet)
  expect(cases).toHaveLength(85)
  const fine = cases.filter(({ input }) => WITHIN_A_DAY.test((input as RuleInput).rule ?? ''))
  expect(fine.map(({ id }) => id)).toEqual([
    'every-15-min',
    'every-hour-and-half',
    'rfc-33',
    'rfc-34',
    'rfc-35a',
    'rfc-35b',
  ])
})
