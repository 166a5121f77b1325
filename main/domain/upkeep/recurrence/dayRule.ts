import { Refusal } from '../../refusal.ts'
import { addMonths, civilDate, dateText, dayNumber } from './dayNumber.ts'
import { walkOccurrences } from './occurrences.ts'
import { type Frequency, ruleParts } from './ruleParts.ts'

/** The days a rule names when it is counted from a start day. */
export interface DayRule {
  /**
   * The first of its days after `after`, counted from `start`; with `after` the day before `start` that can be
   * `start` itself. Null when there are no more. All are day numbers.
   */
  next(start: number, after: number): number | null
}

interface Plain {
  readonly frequency: Frequency
  readonly interval: number
  readonly count: number
}

/** "Every so many days, weeks, months or years" and nothing else; null for any other rule. */
function plainRule(rule: string): Plain | null {
  const { frequency, parts } = ruleParts(rule)
  for (const name of parts.keys()) if (!['FREQ', 'INTERVAL', 'COUNT'].includes(name)) return null
  const count = parts.get('COUNT')
  return {
    frequency,
    interval: Number(parts.get('INTERVAL') ?? 1),
    count: count === undefined ? Number.POSITIVE_INFINITY : Number(count),
  }
}

/**
 * A rule read as days. Plain ones ("every 6 months") are counted directly, since ten thousand cars ask at once; all
 * others go through the `rrule` package. A plain monthly or yearly rule from the 29th, 30th or 31st falls on the last
 * day of a shorter month: an owner told "in six months" does not mean never. (The bare RFC skips such months;
 * `writtenOut` is the RFC rule that says what is meant.) Refuses rules finer than a day: a visit is a day.
 */
export function dayRule(rule: string, zone: string): DayRule {
  const { frequency } = ruleParts(rule)
  if (['SECONDLY', 'MINUTELY', 'HOURLY'].includes(frequency))
    throw new Refusal(
      'rule-too-fine',
      'rule',
      rule,
      `"${rule}" repeats within a day; a visit needs FREQ=DAILY or longer.`,
    )
  const plain = plainRule(rule)
  return plain ? counted(plain) : walked(rule, zone)
}

function counted({ frequency, interval, count }: Plain): DayRule {
  if (frequency === 'DAILY' || frequency === 'WEEKLY') {
    const step = interval * (frequency === 'WEEKLY' ? 7 : 1)
    return {
      next(start, after) {
        const n = Math.max(0, Math.floor((after - start) / step) + 1)
        return n < count ? start + n * step : null
      },
    }
  }
  const step = interval * (frequency === 'YEARLY' ? 12 : 1)
  return {
    next(start, after) {
      // No n below this can lie after `after`: 31 days is the longest month.
      let n = Math.max(0, Math.floor((after - start) / (step * 31)))
      for (;;) {
        if (n >= count) return null
        const day = addMonths(start, n * step)
        if (day > after) return day
        n++
      }
    },
  }
}

function walked(rule: string, zone: string): DayRule {
  return {
    next(start, after) {
      let found: number | null = null
      // From midnight, so that an UNTIL at any hour of a day lets that day count.
      walkOccurrences({ rule, start: `${dateText(start)}T00:00`, zone }, ({ wall }) => {
        const day = dayNumber(wall.slice(0, 10))
        if (day <= after) return true
        found = day
        return false
      })
      return found
    },
  }
}

/** The RFC 5545 rule that names the same days as `dayRule` from this start, for calendars of others. */
export function writtenOut(rule: string, start: number): string {
  const plain = plainRule(rule)
  const { month, day } = civilDate(start)
  if (!plain || day <= 28) return rule
  const lastOf = `BYMONTHDAY=${Array.from({ length: day - 27 }, (_, i) => 28 + i).join(',')};BYSETPOS=-1`
  if (plain.frequency === 'MONTHLY') return `${rule};${lastOf}`
  if (plain.frequency === 'YEARLY' && month === 2) return `${rule};BYMONTH=2;${lastOf}`
  return rule
}
