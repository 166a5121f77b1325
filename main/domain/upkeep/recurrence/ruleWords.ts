import { dayWords, monthNames, weekdayNames } from '../../calendar/index.ts'
import { say, word } from '../../language/index.ts'
import { Refusal } from '../../refusal.ts'
import { listWords, orWords } from '../../words.ts'
import { type Frequency, type RuleParts, ruleParts, WEEKDAYS } from './ruleParts.ts'

const EVERY: Readonly<Record<Frequency, string>> = {
  DAILY: word('{n, plural, one {every day} other {every # days}}'),
  WEEKLY: word('{n, plural, one {every week} other {every # weeks}}'),
  MONTHLY: word('{n, plural, one {every month} other {every # months}}'),
  YEARLY: word('{n, plural, one {every year} other {every # years}}'),
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
  const count = parts.get('COUNT')
  const only = [...parts.keys()].every(name => ['FREQ', 'INTERVAL', 'COUNT', 'WKST'].includes(name))
  if (count === '1' && only) return say('once')
  const words = [say(EVERY[frequency], { n: Number(parts.get('INTERVAL') ?? '1') })]
  const list = (name: string, one: (item: string) => string) => parts.get(name)?.split(',').map(one)
  const months = list('BYMONTH', month => say(monthNames[Number(month) - 1] ?? ''))
  const days = list('BYMONTHDAY', day =>
    day.startsWith('-')
      ? say('the {day} day', { day: placed(Number(day)) })
      : say('the {day}', { day: placed(Number(day)) }),
  )
  const weekdays = list('BYDAY', weekdayWords)
  if (months) words.push(say('in {months}', { months: listWords(months) }))
  if (weekdays) words.push(say('on {weekdays}', { weekdays: listWords(weekdays) }))
  if (days)
    words.push(
      weekdays ? say('that is {days}', { days: orWords(days) }) : say('on {days}', { days: listWords(days) }),
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
  return figure === 0 ? say(name) : say('the {figure} {name}', { figure: placed(figure), name: say(name) })
}

/** 1 as "1st", -1 as "last", -2 as "2nd last". */
function placed(n: number): string {
  if (n === -1) return say('last||of a month')
  const size = Math.abs(n)
  return n < 0
    ? say('{n, selectordinal, one {#st last} two {#nd last} few {#rd last} other {#th last}}', { n: size })
    : say('{n, selectordinal, one {#st} two {#nd} few {#rd} other {#th}}', { n: size })
}
