import {
  addMonths,
  type CivilDate,
  civilDate,
  dayNumberOf,
  daysInMonth,
  weekdayOf,
} from '../../calendar/index.ts'
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

/** A day with all a rule may ask of it. */
interface Candidate extends CivilDate {
  readonly number: number
  /** 1 (Monday) .. 7 (Sunday) */
  readonly weekday: number
}

type Test = (day: Candidate) => boolean

/** The periods of a rule, its interval left out of account. */
export function periodsOf({ frequency, parts }: RuleParts): Periods {
  const weekStart = WEEKDAYS.indexOf(parts.get('WKST') ?? 'MO') + 1
  const fixed = fixedTests(parts, frequency === 'YEARLY' && !parts.has('BYMONTH'), weekStart)
  const positions = figures(parts, 'BYSETPOS')
  const bounds = boundsOf(frequency, weekStart)
  const daysIn = (start: number, index: number) => {
    const tests = [...fixed, ...startTests(start, frequency, parts)]
    const [from, to] = bounds.span(start, index)
    const days: number[] = []
    for (let number = from; number < to; number++) {
      const day = { ...civilDate(number), number, weekday: weekdayOf(number) }
      if (tests.every(test => test(day))) days.push(number)
    }
    if (!positions) return days
    const chosen = new Set(positions.map(place => (place > 0 ? place - 1 : days.length + place)))
    return days.filter((_, place) => chosen.has(place))
  }
  // A walk asks for one period as often as it has days.
  let last = { start: Number.NaN, index: 0, days: [] as readonly number[] }
  return {
    indexOf: bounds.indexOf,
    days(start, index) {
      if (last.start !== start || last.index !== index) last = { start, index, days: daysIn(start, index) }
      return last.days
    },
  }
}

function figures(parts: ReadonlyMap<string, string>, name: string): number[] | null {
  return parts.get(name)?.split(',').map(Number) ?? null
}

/** What the rule itself asks of a day. */
function fixedTests(parts: ReadonlyMap<string, string>, byYear: boolean, weekStart: number): Test[] {
  const tests: Test[] = []
  const oneOf = (name: string, placesOf: (day: Candidate) => readonly number[]) => {
    const wanted = figures(parts, name)
    if (wanted) tests.push(day => placesOf(day).some(place => wanted.includes(place)))
  }
  oneOf('BYMONTH', ({ month }) => [month])
  oneOf('BYMONTHDAY', ({ year, month, day }) => [day, day - daysInMonth(year, month) - 1])
  oneOf('BYYEARDAY', ({ number, year }) => fromBothEnds(number, yearSpan(year)))
  oneOf('BYWEEKNO', ({ number }) => weekPlaces(number, weekStart))
  const weekdays = parts.get('BYDAY')?.split(',')
  if (weekdays) {
    const wanted = weekdays.map(text => ({
      weekday: WEEKDAYS.indexOf(text.slice(-2)) + 1,
      nth: Number(text.slice(0, -2)),
    }))
    tests.push(day =>
      wanted.some(
        ({ weekday, nth }) =>
          day.weekday === weekday && (nth === 0 || weekdayPlaces(day, byYear).includes(nth)),
      ),
    )
  }
  return tests
}

/** What a rule leaves open comes from its start (section 3.3.10: "derived from the Start Time"). */
function startTests(start: number, frequency: string, parts: ReadonlyMap<string, string>): Test[] {
  const { month, day } = civilDate(start)
  const weekday = weekdayOf(start)
  const has = (...names: string[]) => names.some(name => parts.has(name))
  if (frequency === 'DAILY' || has('BYDAY', 'BYMONTHDAY', 'BYYEARDAY')) return []
  if (frequency === 'WEEKLY' || has('BYWEEKNO')) return [one => one.weekday === weekday]
  const sameDay: Test = one => one.day === day
  return frequency === 'MONTHLY' || has('BYMONTH') ? [sameDay] : [sameDay, one => one.month === month]
}

interface Bounds {
  readonly indexOf: Periods['indexOf']
  /** The period's days `[from, to)`. */
  span(start: number, index: number): readonly [number, number]
}

function boundsOf(frequency: string, weekStart: number): Bounds {
  if (frequency === 'DAILY' || frequency === 'WEEKLY') {
    const length = frequency === 'DAILY' ? 1 : 7
    const first = (start: number) => (length === 1 ? start : firstOfWeek(start, weekStart))
    return {
      indexOf: (start, day) => Math.floor((day - first(start)) / length),
      span: (start, index) => [first(start) + index * length, first(start) + (index + 1) * length],
    }
  }
  const months = frequency === 'MONTHLY' ? 1 : 12
  const first = (start: number) => {
    const { year, month } = civilDate(start)
    return dayNumberOf(year, months === 1 ? month : 1, 1)
  }
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

function firstOfWeek(day: number, weekStart: number): number {
  return day - ((weekdayOf(day) - weekStart + 7) % 7)
}

/** A place among the days `[from, to)`, counted from the front and, negative, from the end. */
function fromBothEnds(number: number, [from, to]: readonly [number, number]): [number, number] {
  return [number - from + 1, number - to]
}

function yearSpan(year: number): [number, number] {
  return [dayNumberOf(year, 1, 1), dayNumberOf(year + 1, 1, 1)]
}

/** Which Monday (Tuesday ...) of its month or year a day is, from the front and from the end. */
function weekdayPlaces({ number, year, month, day }: Candidate, byYear: boolean): number[] {
  const [fromFront, fromEnd] = byYear
    ? fromBothEnds(number, yearSpan(year))
    : [day, day - daysInMonth(year, month) - 1]
  return [Math.ceil(fromFront / 7), Math.floor(fromEnd / 7)]
}

/** The number of a day's week in the year that holds most of it, from the front and from the end. */
function weekPlaces(number: number, weekStart: number): number[] {
  const first = firstOfWeek(number, weekStart)
  const { year } = civilDate(first + 3)
  const firstWeek = (of: number) => firstOfWeek(dayNumberOf(of, 1, 4), weekStart)
  return [(first - firstWeek(year)) / 7 + 1, (first - firstWeek(year + 1)) / 7]
}
