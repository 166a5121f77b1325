import { dayWords, monthNames, weekdayNames } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { Refusal } from '../../refusal.ts'
import { type Frequency, type RuleParts, ruleParts, WEEKDAYS } from './ruleParts.ts'

const UNITS: Readonly<Record<Frequency, string>> = {
  DAILY: 'day',
  WEEKLY: 'week',
  MONTHLY: 'month',
  YEARLY: 'year',
}
const TOLD = ['FREQ', 'INTERVAL', 'COUNT', 'UNTIL', 'WKST', 'BYMONTH', 'BYDAY', 'BYMONTHDAY']

/**
 * A recurrence rule in words: "every 6 months", "every year in October on the last Friday". A rule with parts these
 * words do not reach is given as it is written: half a rule in words would be another rule.
 */
export function ruleWords(rule: string): string {
  const read = partsOrNull(rule)
  if (!read || ![...read.parts.keys()].every(name => TOLD.includes(name)))
    return say('by the rule {rule}', { rule })
  const { frequency, parts } = read
  const unit = UNITS[frequency]
  const count = parts.get('COUNT')
  const only = [...parts.keys()].every(name => ['FREQ', 'INTERVAL', 'COUNT', 'WKST'].includes(name))
  if (count === '1' && only) return 'once'
  const interval = parts.get('INTERVAL') ?? '1'
  const words = [
    interval === '1' ? say('every {unit}', { unit }) : say('every {interval} {unit}s', { interval, unit }),
  ]
  const list = (name: string, one: (item: string) => string) => parts.get(name)?.split(',').map(one)
  const months = list('BYMONTH', month => monthNames[Number(month) - 1] ?? '')
  const days = list('BYMONTHDAY', day =>
    say('the {day}{day2}', { day: placed(Number(day)), day2: day.startsWith('-') ? ` ${say('day')}` : '' }),
  )
  const weekdays = list('BYDAY', weekdayWords)
  if (months) words.push(say('in {months}', { months: joined(months) }))
  if (weekdays) words.push(say('on {weekdays}', { weekdays: joined(weekdays) }))
  if (days)
    words.push(
      weekdays
        ? say('that is {days}', { days: joined(days, 'or') })
        : say('on {days}', { days: joined(days) }),
    )
  const until = parts.get('UNTIL')
  if (until) {
    words.push(say('until {until}', { until: dayWords(until.replace(/^(....)(..)/, '$1-$2-')) }))
  }
  return words.join(' ') + (count ? say(', {count} times', { count }) : '')
}

/** A rule kept from before a limit was set is still shown. */
function partsOrNull(rule: string): RuleParts | null {
  try {
    return ruleParts(rule)
  } catch (error) {
    if (error instanceof Refusal) return null
    throw error
  }
}

function weekdayWords(text: string): string {
  const name = weekdayNames[WEEKDAYS.indexOf(text.slice(-2))] ?? ''
  const figure = Number(text.slice(0, -2))
  return figure === 0 ? name : say('the {figure} {name}', { figure: placed(figure), name })
}

/** 1 as "1st", -1 as "last", -2 as "2nd last". */
function placed(n: number): string {
  if (n === -1) return 'last'
  const size = Math.abs(n)
  const teens = size % 100 > 10 && size % 100 < 14
  const ending = teens ? 'th' : (['th', 'st', 'nd', 'rd'][size % 10] ?? 'th')
  return `${size}${ending}${n < 0 ? ` ${say('last')}` : ''}`
}

function joined(items: readonly string[], word = 'and'): string {
  if (items.length < 2) return items[0] ?? ''
  return `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`
}
