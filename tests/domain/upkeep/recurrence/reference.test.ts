// RFC 5545 section 3.8.5.3 (its examples), 3.3.10 and 3.3.5; clock changes: IANA time zone database.
import { expect, it } from 'vitest'
import { instantOf, minuteOf } from '../../../../main/domain/calendar/index.ts'
import { firstOccurrences } from '../../../../main/domain/upkeep/recurrence/occurrences.ts'
import { type Case, casesOf, runCases } from '../../../reference/cases.ts'

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

/** As many as expected, and one more, which must not come where the list is complete. */
function occurrencesOf({ zone, start, rule, exdate, exdates, rdates }: RuleInput, count: number) {
  return firstOccurrences(
    { rule, start, zone, except: exdates ?? (exdate ? [exdate] : []), extra: rdates ?? [] },
    count,
  )
}

const utcText = (at: number) => instantOf(at).toString({ smallestUnit: 'minute' })

/** The dates on which the zone's letters change along a list of occurrences, as the RFC prints them. */
function abbreviations(zone: string, ats: readonly number[]): [string, string][] {
  const changes: [string, string][] = []
  for (const at of ats) {
    const time = instantOf(at).toZonedDateTimeISO(zone)
    const letters = time.toLocaleString('en-US', { timeZoneName: 'short' }).split(' ').at(-1)!
    if (changes.at(-1)?.[1] !== letters) changes.push([time.toPlainDate().toString(), letters])
  }
  return changes
}

runCases('recurrence', firstSet, {
  'first-occurrences': ({ input, expected }: Case<RuleInput, { local: string[] }>) => {
    const ends = /COUNT|UNTIL/.test(input.rule) && expected.local.length < input.first!
    const found = occurrencesOf(input, ends ? input.first! : expected.local.length)
    expect(found.map(({ wall }) => wall)).toEqual(expected.local)
  },

  'wall-time': ({ input, expected }: Case<RuleInput, { utc: string[] }>) => {
    expect(occurrencesOf(input, 99).map(({ at }) => utcText(at))).toEqual(expected.utc)
  },

  'rfc-example': ({
    input,
    expected,
  }: Case<
    RuleInput,
    { localDatesAt0900?: string[]; local?: string[]; abbreviation?: [string, string][]; complete: boolean }
  >) => {
    const local = expected.local ?? expected.localDatesAt0900!.map(date => `${date}T09:00`)
    const found = occurrencesOf(input, local.length + (expected.complete ? 1 : 0))
    expect(found.map(({ wall }) => wall)).toEqual(local)
    if (expected.abbreviation)
      expect(
        abbreviations(
          input.zone,
          found.map(({ at }) => at),
        ),
      ).toEqual(expected.abbreviation)
  },

  plan: ({ input, expected }: Case<RuleInput, { local: string[]; utc: string[]; complete: boolean }>) => {
    const found = occurrencesOf(input, expected.local.length + (expected.complete ? 1 : 0))
    expect(found.map(({ wall }) => wall)).toEqual(expected.local)
    expect(found.map(({ at }) => utcText(at))).toEqual(expected.utc)
  },

  'local-to-utc': ({ input, expected }: Case<{ zone: string; local: string }, { utc: string }>) => {
    const [once] = firstOccurrences({ rule: 'FREQ=DAILY;COUNT=1', start: input.local, zone: input.zone }, 1)
    expect(once!.at).toBe(minuteOf(Temporal.Instant.from(expected.utc)))
  },
})

it('reads 85 cases', () => {
  expect(casesOf('recurrence', firstSet)).toHaveLength(85)
})
