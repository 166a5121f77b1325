import { minuteOf, zonedOf } from '../../calendar/index.ts'
import { Refusal } from '../../refusal.ts'
import { RRule } from './library.ts'
import { ruleParts } from './ruleParts.ts'

/** A recurrence as RFC 5545 writes it: a rule, its start (DTSTART) in a zone, and dates left out or added. */
export interface Recurrence {
  /** Such as `FREQ=MONTHLY;INTERVAL=6`. */
  readonly rule: string
  /** Wall time of the first occurrence, `YYYY-MM-DDTHH:MM`. */
  readonly start: string
  /** IANA name. */
  readonly zone: string
  /** Wall times left out (EXDATE). */
  readonly except?: readonly string[]
  /** Wall times added (RDATE). */
  readonly extra?: readonly string[]
}

export interface Occurrence {
  /** Wall time in the recurrence's zone, `YYYY-MM-DDTHH:MM`. */
  readonly wall: string
  /** The epoch minute it names. */
  readonly at: number
}

function wallTime(text: string, field: string): Temporal.PlainDateTime {
  try {
    return Temporal.PlainDateTime.from(text, { overflow: 'reject' })
  } catch {
    throw new Refusal(
      'wall-time-bad',
      field,
      text,
      `"${text}" is not a date and time; write 2026-03-08T09:00.`,
    )
  }
}

/**
 * The package computes in `Date`s whose UTC fields are read as wall time. This is the only place that makes them, so
 * that the zone of the machine can never enter.
 */
function dressed(wall: Temporal.PlainDateTime): Date {
  return new Date(wall.toZonedDateTime('UTC').epochMilliseconds)
}

function undressed(date: Date): Temporal.PlainDateTime {
  return zonedOf(Math.floor(date.getTime() / 60_000), 'UTC').toPlainDateTime()
}

interface Until {
  /** The last wall time that can still count, for the package. */
  readonly wall: Temporal.PlainDateTime
  readonly holds: (occurrence: Occurrence) => boolean
}

/**
 * UNTIL as the RFC means it. With a Z it is an instant, which wall time cannot tell apart on the night the clock goes
 * back: the package gets a day more and the instants decide. Without, it is a wall time; a bare date is that whole day.
 */
function untilOf(text: string, zone: string): Until {
  const dashed = text.replace(/^(\d{4})(\d\d)(\d\d)/, '$1-$2-$3').replace(/T(\d\d)(\d\d)(\d\d)/, 'T$1:$2:$3')
  try {
    if (dashed.endsWith('Z')) {
      const instant = Temporal.Instant.from(dashed)
      const lastAt = minuteOf(instant)
      const wall = instant.toZonedDateTimeISO(zone).toPlainDateTime().add({ days: 1 })
      return { wall, holds: occurrence => occurrence.at <= lastAt }
    }
    const wall = Temporal.PlainDateTime.from(dashed.includes('T') ? dashed : `${dashed}T23:59`, {
      overflow: 'reject',
    })
    return { wall, holds: () => true }
  } catch {
    throw new Refusal('rule-bad', 'rule', text, `UNTIL=${text} is no date of the calendar.`)
  }
}

/**
 * Walks over the occurrences of a recurrence in order until `visit` returns false or they end. Wall time stays put
 * across clock changes. A wall time the clock skips is taken with the offset before the gap, one it shows twice is
 * the first (RFC 5545, section 3.3.5); where that makes two fall on the same minute they count once.
 */
export function walkOccurrences(recurrence: Recurrence, visit: (occurrence: Occurrence) => boolean): void {
  const { zone } = recurrence
  const { parts } = ruleParts(recurrence.rule)
  const untilText = parts.get('UNTIL')
  const until = untilText === undefined ? null : untilOf(untilText, zone)
  const bare = [...parts].filter(([name]) => name !== 'UNTIL').map(([name, value]) => `${name}=${value}`)
  const rule = new RRule(
    {
      ...RRule.parseString(bare.join(';')),
      dtstart: dressed(wallTime(recurrence.start, 'start')),
      ...(until && { until: dressed(until.wall) }),
    },
    true,
  )
  const named = (walls: readonly string[] | undefined, field: string) =>
    (walls ?? []).map((text, i) => occurrenceAt(wallTime(text, `${field}.${i}`), zone))
  const left = new Set(named(recurrence.except, 'except').map(({ at }) => at))
  // The package's own set gives added dates before all others when it is walked, so they are merged here.
  const extra = named(recurrence.extra, 'extra').sort((a, b) => a.at - b.at)

  let lastAt = Number.NEGATIVE_INFINITY
  let wanted = true
  const give = (occurrence: Occurrence) => {
    if (occurrence.at === lastAt) return
    lastAt = occurrence.at
    if (!left.has(occurrence.at)) wanted = visit(occurrence)
  }
  const giveExtraBefore = (at: number) => {
    while (wanted && extra.length > 0 && extra[0]!.at < at) give(extra.shift()!)
  }
  rule.all(date => {
    const occurrence = occurrenceAt(undressed(date), zone)
    if (until && !until.holds(occurrence)) return false
    giveExtraBefore(occurrence.at)
    if (wanted) give(occurrence)
    return wanted
  })
  giveExtraBefore(Number.POSITIVE_INFINITY)
}

function occurrenceAt(wall: Temporal.PlainDateTime, zone: string): Occurrence {
  return {
    wall: wall.toString({ smallestUnit: 'minute' }),
    at: minuteOf(wall.toZonedDateTime(zone, { disambiguation: 'compatible' })),
  }
}

/** The first `count` occurrences, or all where there are fewer. */
export function firstOccurrences(recurrence: Recurrence, count: number): Occurrence[] {
  const found: Occurrence[] = []
  if (count > 0) walkOccurrences(recurrence, occurrence => found.push(occurrence) < count)
  return found
}

/** The occurrences in `[fromAt, toAt)`, epoch minutes. */
export function occurrencesBetween(recurrence: Recurrence, fromAt: number, toAt: number): Occurrence[] {
  const found: Occurrence[] = []
  walkOccurrences(recurrence, occurrence => {
    if (occurrence.at >= toAt) return false
    if (occurrence.at >= fromAt) found.push(occurrence)
    return true
  })
  return found
}
