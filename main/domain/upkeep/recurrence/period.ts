import { addMonths, civilDate, dayNumberOf, weekdayOf } from '../../calendar/index.ts'
import { daysNamed } from './library.ts'
import { type RuleParts, WEEKDAYS } from './ruleParts.ts'

/**
 * A rule's days in one of its periods (RFC 5545 section 3.3.10): the day, the week, the month or the year its
 * frequency names. Several weekdays are a union, "the first Monday and every Friday".
 */
export interface Periods {
  /** The period a day lies in, counted from the one of `start`, which is 0. */
  indexOf(start: number, day: number): number
  /** The days the rule names in a period, in order, whether or not they come before `start`. */
  days(start: number, index: number): readonly number[]
}

/** The periods of a rule, its interval left out of account. */
export function periodsOf({ frequency, parts }: RuleParts): Periods {
  const bounds = boundsOf(frequency, WEEKDAYS.indexOf(parts.get('WKST') ?? 'MO') + 1)
  const positions = parts.get('BYSETPOS')?.split(',').map(Number)
  const daysIn = (start: number, index: number) => {
    const [from, to] = bounds.span(start, index)
    const days = daysWithin(plainRules(frequency, parts, start), frequency === 'YEARLY', from, to)
    if (!positions) return days
    const chosen = new Set(positions.map(place => (place > 0 ? place - 1 : days.length + place)))
    return days.filter((_, place) => chosen.has(place))
  }
  return { indexOf: bounds.indexOf, days: remembered(daysIn) }
}

/** A walk asks for one period as often as it has days. */
function remembered(daysIn: Periods['days']): Periods['days'] {
  let last = { start: Number.NaN, index: 0, days: [] as readonly number[] }
  return (start, index) => {
    if (last.start !== start || last.index !== index) last = { start, index, days: daysIn(start, index) }
    return last.days
  }
}

/**
 * The rules whose union names the days, of months or years: a daily or weekly rule asks of each day what a monthly one
 * would. What a rule leaves open comes from its start (section 3.3.10), and counted weekdays stand apart from plain ones.
 */
function plainRules(frequency: string, given: ReadonlyMap<string, string>, start: number): string[] {
  const parts = new Map([...given].filter(([name]) => name.startsWith('BY') && name !== 'BYSETPOS'))
  const has = (...names: string[]) => names.some(name => parts.has(name))
  if (!has('BYDAY', 'BYMONTHDAY', 'BYYEARDAY')) {
    const { month, day } = civilDate(start)
    if (frequency === 'DAILY') parts.set('BYDAY', WEEKDAYS.join())
    else if (frequency === 'WEEKLY' || has('BYWEEKNO'))
      parts.set('BYDAY', WEEKDAYS[weekdayOf(start) - 1] ?? '')
    else {
      if (frequency === 'YEARLY' && !has('BYMONTH')) parts.set('BYMONTH', String(month))
      parts.set('BYMONTHDAY', String(day))
    }
  }
  const weekdays = parts.get('BYDAY')?.split(',') ?? []
  const counted = weekdays.filter(text => /\d/.test(text))
  const plain = weekdays.filter(text => !/\d/.test(text))
  const written = [...parts].filter(([name]) => name !== 'BYDAY').map(([name, value]) => `${name}=${value}`)
  const whole = [
    `FREQ=${frequency === 'YEARLY' ? 'YEARLY' : 'MONTHLY'}`,
    `WKST=${given.get('WKST') ?? 'MO'}`,
    ...written,
  ]
  const groups = [counted, plain].filter(group => group.length > 0)
  return groups.length === 0
    ? [whole.join(';')]
    : groups.map(group => [...whole, `BYDAY=${group.join()}`].join(';'))
}

/** The days within `[from, to)` that any of the rules names. */
function daysWithin(rules: readonly string[], byYear: boolean, from: number, to: number): number[] {
  const days = new Set<number>()
  for (let month = from; month < to; month = byYear ? to : addMonths(firstOfMonth(month), 1)) {
    const first = civilDate(month)
    for (const rule of rules)
      for (const day of daysNamed(rule, first.year, first.month)) if (day >= from && day < to) days.add(day)
  }
  return [...days].sort((a, b) => a - b)
}

function firstOfMonth(day: number): number {
  const { year, month } = civilDate(day)
  return dayNumberOf(year, month, 1)
}

interface Bounds {
  readonly indexOf: Periods['indexOf']
  /** The period's days `[from, to)`. */
  span(start: number, index: number): readonly [number, number]
}

function boundsOf(frequency: string, weekStart: number): Bounds {
  if (frequency === 'DAILY' || frequency === 'WEEKLY') {
    const length = frequency === 'DAILY' ? 1 : 7
    const first = (start: number) => (length === 1 ? start : start - ((weekdayOf(start) - weekStart + 7) % 7))
    return {
      indexOf: (start, day) => Math.floor((day - first(start)) / length),
      span: (start, index) => [first(start) + index * length, first(start) + (index + 1) * length],
    }
  }
  const months = frequency === 'MONTHLY' ? 1 : 12
  const first = (start: number) =>
    months === 1 ? firstOfMonth(start) : dayNumberOf(civilDate(start).year, 1, 1)
  return {
    indexOf: (start, day) => {
      const from = civilDate(start)
      const to = civilDate(day)
      const years = to.year - from.year
      return months === 12 ? years : years * 12 + to.month - from.month
    },
    span: (start, index) => [
      addMonths(first(start), index * months),
      addMonths(first(start), (index + 1) * months),
    ],
  }
}
