/**
 * The bridge between the domain's time (whole minutes since 1970-01-01T00:00Z) and wall time in an IANA zone.
 * Everything else in the domain is plain arithmetic on those minutes.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

const MS_PER_MINUTE = 60_000

/** The epoch minute an instant lies in: seconds are dropped. */
export function minuteOf(time: Temporal.Instant | Temporal.ZonedDateTime): number {
  return Math.floor(time.epochMilliseconds / MS_PER_MINUTE)
}

/** The instant at the start of an epoch minute. */
export function instantOf(at: number): Temporal.Instant {
  return Temporal.Instant.fromEpochMilliseconds(at * MS_PER_MINUTE)
}

/** An epoch minute as date and time in `zone`. */
export function zonedOf(at: number, zone: string): Temporal.ZonedDateTime {
  return instantOf(at).toZonedDateTimeISO(zone)
}

/** The calendar date (`YYYY-MM-DD`) that `zone` shows at an epoch minute. */
export function dateOf(at: number, zone: string): string {
  return zonedOf(at, zone).toPlainDate().toString()
}

/** What the wall clock of `zone` shows at an epoch minute, as minutes after midnight (0..1439). */
export function wallMinuteOf(at: number, zone: string): number {
  const { hour, minute } = zonedOf(at, zone)
  return hour * 60 + minute
}

/** The first epoch minute of a date in `zone`; 01:00 where the clock skips midnight, the earlier one of two. */
export function startOfDay(date: string, zone: string): number {
  return minuteOf(Temporal.PlainDate.from(date).toZonedDateTime(zone))
}

/**
 * The epoch minute at which the wall clock of `zone` shows `wallMin` (0..1440, 1440 being the end of the day) on
 * `date`. Where the clock repeats that time the earlier one is meant; where it skips it, the time as far behind the
 * jump as it was asked for after the last minute before (02:30 becomes 03:30). That is Temporal's 'compatible', and
 * RFC 5545 section 3.3.5 says the same.
 */
export function atWall(date: string, wallMin: number, zone: string): number {
  const day = Temporal.PlainDate.from(date)
  if (wallMin <= 0) return minuteOf(day.toZonedDateTime(zone))
  if (wallMin >= 1440) return minuteOf(day.add({ days: 1 }).toZonedDateTime(zone))
  const time = new Temporal.PlainTime(Math.floor(wallMin / 60), wallMin % 60)
  return minuteOf(day.toPlainDateTime(time).toZonedDateTime(zone, { disambiguation: 'compatible' }))
}

/** The same wall time `days` later (or earlier, when negative), as RFC 5545 section 3.3.6 adds nominal days. */
export function addDays(at: number, days: number, zone: string): number {
  return minuteOf(zonedOf(at, zone).add({ days }))
}

/** Refuses a zone this machine's time zone database does not know. */
export function checkZone(zone: string, field = 'zone'): void {
  try {
    zonedOf(0, zone)
  } catch {
    refuse(
      'zone-unknown',
      { [field]: zone },
      say('"{zone}" is not a known time zone; choose one such as America/New_York or Europe/Berlin.', {
        zone,
      }),
    )
  }
}

/** Refuses text that is not a date of the calendar written `YYYY-MM-DD`. */
export function checkDate(date: string, field = 'date'): void {
  try {
    if (Temporal.PlainDate.from(date, { overflow: 'reject' }).toString() === date) return
  } catch {
    // Falls through to the same refusal as a date written another way.
  }
  refuse(
    'date-bad',
    { [field]: date },
    say('"{date}" is not a date; write it as year-month-day, 2026-03-08.', { date }),
  )
}
