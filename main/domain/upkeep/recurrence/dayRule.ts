import { addMonths, civilDate, dayNumber, firstIndex } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { type Periods, periodsOf } from './period.ts'
import { type RuleParts, ruleParts } from './ruleParts.ts'

/** The days a rule names when it is counted from a start day. */
export interface DayRule {
  /**
   * The first of its days after `after`, counted from `start`; with `after` the day before `start` that can be
   * `start` itself. Null when there are no more. All are day numbers.
   */
  next(start: number, after: number): number | null
}

/**
 * How far ahead the next day of a rule is looked for. A leap day on a given weekday comes every 28 years, once 40
 * (over the year 2100); a rule with none in 60 is taken to name none.
 */
const AHEAD_DAYS = 60 * 366

/**
 * A rule read as days, as RFC 5545 section 3.3.10 means it. A plain monthly or yearly rule ("every 6 months" and
 * nothing else) from the 29th, 30th or 31st falls on the last day of a shorter month: an owner told "in six months"
 * does not mean never, where the bare RFC skips such months. `zone` is for an UNTIL that is an instant. Refuses a rule
 * `ruleParts` refuses.
 */
export function dayRule(rule: string, zone: string): DayRule {
  const key = `${zone} ${rule}`
  const known = read.get(key)
  if (known) return known
  const made = readRule(rule, zone)
  if (read.size >= mostRead) read.clear()
  read.set(key, made)
  return made
}

/** Ten thousand plans have a few dozen rules between them. */
const read = new Map<string, DayRule>()
const mostRead = 500

function readRule(rule: string, zone: string): DayRule {
  const read = ruleParts(rule)
  const { frequency, parts } = read
  const interval = Number(parts.get('INTERVAL') ?? 1)
  const count = Number(parts.get('COUNT') ?? Number.POSITIVE_INFINITY)
  const plain = [...parts.keys()].every(name => ['FREQ', 'INTERVAL', 'COUNT'].includes(name))
  if (plain && (frequency === 'MONTHLY' || frequency === 'YEARLY'))
    return everyMonths(interval * (frequency === 'YEARLY' ? 12 : 1), count)
  if (plain) return everyDays(interval * (frequency === 'WEEKLY' ? 7 : 1), count)
  const until = untilDay(read, zone)
  const expanded = { periods: periodsOf(read), interval, until }
  return parts.has('COUNT')
    ? counted(expanded, count)
    : { next: (start, after) => firstDay(expanded, start, after) }
}

function everyDays(step: number, count: number): DayRule {
  return {
    next(start, after) {
      const n = Math.max(0, Math.floor((after - start) / step) + 1)
      return n < count ? start + n * step : null
    },
  }
}

function everyMonths(step: number, count: number): DayRule {
  return {
    next(start, after) {
      const from = civilDate(start)
      const to = civilDate(after)
      const months = (to.year - from.year) * 12 + to.month - from.month
      let n = Math.max(0, Math.floor(months / step))
      if (addMonths(start, n * step) <= after) n++
      return n < count ? addMonths(start, n * step) : null
    },
  }
}

interface Expanded {
  readonly periods: Periods
  readonly interval: number
  /** The last day that counts. */
  readonly until: number
}

function firstDay({ periods, interval, until }: Expanded, start: number, after: number): number | null {
  const from = Math.max(start, after + 1)
  const last = Math.min(until, from + AHEAD_DAYS)
  const lastIndex = periods.indexOf(start, last)
  const skipped = Math.max(0, Math.ceil(periods.indexOf(start, from) / interval))
  for (let index = skipped * interval; index <= lastIndex; index += interval)
    for (const day of periods.days(start, index)) if (day >= from) return day <= last ? day : null
  return null
}

/** With a COUNT the days are counted from the start, so they are listed once for each start. */
function counted(expanded: Expanded, count: number): DayRule {
  let listedFor = Number.NaN
  let listed: number[] = []
  return {
    next(start, after) {
      if (start !== listedFor) {
        listed = []
        let day = firstDay(expanded, start, start - 1)
        while (day !== null && listed.push(day) < count) day = firstDay(expanded, start, day)
        listedFor = start
      }
      return listed[firstIndex(listed.length, i => (listed[i] ?? 0) > after)] ?? null
    },
  }
}

/** The last day an UNTIL lets count: its own date, or the one its instant falls on in the shop's zone. */
function untilDay({ parts }: RuleParts, zone: string): number {
  const text = parts.get('UNTIL')
  if (text === undefined) return Number.POSITIVE_INFINITY
  const [, year, month, day, hours, minutes, seconds] =
    /^(\d{4})(\d\d)(\d\d)(?:T(\d\d)(\d\d)(\d\d)Z)?/.exec(text) ?? []
  const date = `${year}-${month}-${day}`
  try {
    if (!hours) return dayNumber(date)
    const instant = Temporal.Instant.from(`${date}T${hours}:${minutes}:${seconds}Z`)
    return dayNumber(instant.toZonedDateTimeISO(zone).toPlainDate().toString())
  } catch {
    refuse('rule-bad', { rule: text }, say('UNTIL={text} is no date of the calendar.', { text }))
  }
}
