/**
 * RFC 5545 section 3.3.10 read aloud: every day of the calendar is asked whether the rule names it, by Temporal and
 * nothing of the expander. Slow on purpose.
 */
type Day = Temporal.PlainDate

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']

function partsOf(rule: string): Record<string, string> {
  return Object.fromEntries(rule.split(';').map(part => part.split('=') as [string, string]))
}

/** The first day of the period of a frequency that a day lies in. */
function periodOf(day: Day, frequency: string, weekStart: number): Day {
  if (frequency === 'DAILY') return day
  if (frequency === 'WEEKLY') return day.subtract({ days: (day.dayOfWeek - weekStart + 7) % 7 })
  return frequency === 'MONTHLY' ? day.with({ day: 1 }) : day.with({ month: 1, day: 1 })
}

function periodsApart(a: Day, b: Day, frequency: string): number {
  if (frequency === 'DAILY') return a.until(b).days
  if (frequency === 'WEEKLY') return a.until(b).days / 7
  const months = (b.year - a.year) * 12 + b.month - a.month
  return frequency === 'MONTHLY' ? months : months / 12
}

/** Whether a day is the nth (negative: from the end) of its weekday, in its month or in its year. */
function isNth(day: Day, nth: number, inYear: boolean): boolean {
  const same = (other: Day) =>
    inYear ? other.year === day.year : day.toPlainYearMonth().equals(other.toPlainYearMonth())
  const step = nth > 0 ? -7 : 7
  let place = 1
  for (let other = day.add({ days: step }); same(other); other = other.add({ days: step })) place++
  return place === Math.abs(nth)
}

function named(day: Day, start: Day, parts: Record<string, string>): boolean {
  const { FREQ = '', BYMONTH, BYMONTHDAY, BYYEARDAY, BYWEEKNO, BYDAY } = parts
  const has = (list: string | undefined, ...figures: number[]) =>
    list === undefined || list.split(',').some(text => figures.includes(Number(text)))
  const weeks = day.weekOfYear! <= 1 && day.month === 12 ? day.year + 1 : day.yearOfWeek!
  const lastWeek = new Temporal.PlainDate(weeks, 12, 28).weekOfYear!
  if (!has(BYMONTH, day.month)) return false
  if (!has(BYMONTHDAY, day.day, day.day - day.daysInMonth - 1)) return false
  if (!has(BYYEARDAY, day.dayOfYear, day.dayOfYear - day.daysInYear - 1)) return false
  if (!has(BYWEEKNO, day.weekOfYear!, day.weekOfYear! - lastWeek - 1)) return false
  if (BYDAY) {
    const inYear = FREQ === 'YEARLY' && !BYMONTH
    return BYDAY.split(',').some(text => {
      const nth = Number(text.slice(0, -2))
      return text.endsWith(WEEKDAYS[day.dayOfWeek - 1]!) && (nth === 0 || isNth(day, nth, inYear))
    })
  }
  if (FREQ === 'DAILY' || BYMONTHDAY || BYYEARDAY) return true
  if (FREQ === 'WEEKLY' || BYWEEKNO) return day.dayOfWeek === start.dayOfWeek
  return day.day === start.day && (FREQ === 'MONTHLY' || BYMONTH !== undefined || day.month === start.month)
}

/** The days a rule (without COUNT and UNTIL) names from its start to a last day. */
export function daysByDefinition(rule: string, startOn: string, lastOn: string): string[] {
  const parts = partsOf(rule)
  const { FREQ = '', INTERVAL = '1', WKST = 'MO', BYSETPOS } = parts
  const start = Temporal.PlainDate.from(startOn)
  const weekStart = WEEKDAYS.indexOf(WKST) + 1
  const first = periodOf(start, FREQ, weekStart)
  const found: string[] = []
  let period: string[] = []
  let key = first
  const close = () => {
    const places = BYSETPOS?.split(',').map(Number)
    for (const [i, date] of period.entries())
      if (!places || places.includes(i + 1) || places.includes(i - period.length)) found.push(date)
    period = []
  }
  for (let day = first; ; day = day.add({ days: 1 })) {
    const here = periodOf(day, FREQ, weekStart)
    if (!here.equals(key)) {
      close()
      key = here
      // Whole periods only, or a BYSETPOS from the end would be counted in a part of one.
      if (day.toString() > lastOn) break
    }
    if (periodsApart(first, here, FREQ) % Number(INTERVAL) === 0 && named(day, start, parts))
      period.push(day.toString())
  }
  return found.filter(date => date >= startOn && date <= lastOn)
}
