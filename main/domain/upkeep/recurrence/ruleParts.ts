import { say } from '../../language/index.ts'
import { Refusal } from '../../refusal.ts'

export type Frequency = 'DAILY' | 'WEEKLY' | 'MONTHLY' | 'YEARLY'

/** A recurrence rule taken apart: the frequency, and every other part by its name, as written. */
export interface RuleParts {
  readonly frequency: Frequency
  readonly parts: ReadonlyMap<string, string>
}

/** The longest interval of each frequency: twenty years, longer than anybody plans for a car. */
const LONGEST: Readonly<Record<Frequency, number>> = { DAILY: 7305, WEEKLY: 1043, MONTHLY: 240, YEARLY: 20 }
const MOST_VISITS = 1000
const WITHIN_A_DAY = /^(FREQ=(SECONDLY|MINUTELY|HOURLY)|BY(SECOND|MINUTE|HOUR)=.*)$/

/** From Monday on, so that the place plus 1 is the ISO weekday. */
export const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']

/** Least and most of each list part, and whether its figures may count from the end. */
const LISTS: Readonly<Record<string, readonly [number, number, boolean]>> = {
  BYMONTHDAY: [1, 31, true],
  BYYEARDAY: [1, 366, true],
  BYWEEKNO: [1, 53, true],
  BYMONTH: [1, 12, false],
  BYSETPOS: [1, 366, true],
}

function refuse(rule: string, why: string): never {
  throw new Refusal('rule-bad', 'rule', rule, say('"{rule}" is not a rule for visits: {why}.', { rule, why }))
}

/**
 * Takes an RFC 5545 recurrence rule of days or longer apart, refusing what section 3.3.10 does not allow: a plan with a
 * slip in it must not quietly mean another one. Refuses also parts of a day (a visit is a day), intervals over twenty
 * years and counts over 1000.
 */
export function ruleParts(rule: string): RuleParts {
  const parts = new Map<string, string>()
  for (const piece of rule.replace(/^RRULE:/, '').split(';')) {
    if (WITHIN_A_DAY.test(piece))
      throw new Refusal(
        'rule-too-fine',
        'rule',
        rule,
        say(
          '"{piece}" repeats within a day, and a visit is a day: use FREQ=DAILY or longer, without hours or minutes.',
          { piece },
        ),
      )
    const [, name = '', value = ''] =
      /^([A-Z]+)=(.+)$/.exec(piece) ?? refuse(rule, say('"{piece}" is not NAME=VALUE', { piece }))
    if (parts.has(name)) refuse(rule, say('{name} is there twice', { name }))
    parts.set(name, value)
  }
  const frequency = parts.get('FREQ') ?? refuse(rule, say('FREQ is missing, such as FREQ=MONTHLY'))
  if (!isFrequency(frequency))
    refuse(
      rule,
      say('FREQ={frequency} is none of {frequencies}', {
        frequency,
        frequencies: Object.keys(LONGEST).join(', '),
      }),
    )
  if (parts.has('COUNT') && parts.has('UNTIL')) refuse(rule, say('COUNT and UNTIL exclude each other'))
  for (const [name, value] of parts) checkPart(rule, frequency, name, value)
  checkTogether(rule, frequency, parts)
  return { frequency, parts }
}

function isFrequency(text: string): text is Frequency {
  return Object.hasOwn(LONGEST, text)
}

function checkPart(rule: string, frequency: Frequency, name: string, value: string) {
  if (name === 'FREQ') return
  if (name === 'INTERVAL' || name === 'COUNT') {
    const most = name === 'COUNT' ? MOST_VISITS : LONGEST[frequency]
    if (!/^[1-9]\d{0,5}$/.test(value) || Number(value) > most)
      refuse(rule, say('{name}={value} is not a whole number from 1 to {most}', { name, value, most }))
  } else if (name === 'UNTIL') {
    if (!/^\d{8}(T\d{6}Z?)?$/.test(value))
      refuse(rule, say('UNTIL={value} is neither a date (20261231) nor a time (20261231T080000Z)', { value }))
  } else if (name === 'WKST') {
    if (!WEEKDAYS.includes(value))
      refuse(rule, say('WKST={value} is none of {weekdays}', { value, weekdays: WEEKDAYS.join(', ') }))
  } else if (name === 'BYDAY') {
    for (const day of value.split(',')) {
      const [, sign, figure, weekday] = /^([+-]?)(\d{1,2})?([A-Z]{2})$/.exec(day) ?? []
      if (!weekday || !WEEKDAYS.includes(weekday) || (sign && !figure) || Number(figure ?? 1) < 1)
        refuse(rule, say('{day} is no weekday such as MO, 1MO or -1FR', { day }))
      if (Number(figure ?? 1) > 53) refuse(rule, say('{day} counts further than 53', { day }))
    }
  } else {
    const [least, most, signed] = LISTS[name] ?? refuse(rule, say('{name} is no part of a rule', { name }))
    for (const figure of value.split(',')) {
      const size = Number(figure.replace(/^[+-]/, ''))
      if (!/^[+-]?\d{1,3}$/.test(figure) || size < least || size > most || (/^[+-]/.test(figure) && !signed))
        refuse(
          rule,
          signed
            ? say('{name} takes {least} to {most}, or from the end with a minus, not {figure}', {
                name,
                least,
                most,
                figure,
              })
            : say('{name} takes {least} to {most}, not {figure}', { name, least, most, figure }),
        )
    }
  }
}

/** What section 3.3.10 says must not stand together. */
function checkTogether(rule: string, frequency: Frequency, parts: ReadonlyMap<string, string>) {
  if (/\d/.test(parts.get('BYDAY') ?? '')) {
    if (frequency !== 'MONTHLY' && frequency !== 'YEARLY')
      refuse(rule, say('a counted weekday (1MO) needs FREQ=MONTHLY or YEARLY'))
    if (parts.has('BYWEEKNO')) refuse(rule, say('a counted weekday (1MO) cannot go with BYWEEKNO'))
  }
  if (parts.has('BYMONTHDAY') && frequency === 'WEEKLY')
    refuse(rule, say('BYMONTHDAY cannot go with FREQ=WEEKLY'))
  if (parts.has('BYYEARDAY') && frequency !== 'YEARLY')
    refuse(rule, say('BYYEARDAY cannot go with FREQ={frequency}', { frequency }))
  if (parts.has('BYWEEKNO') && frequency !== 'YEARLY') refuse(rule, say('BYWEEKNO needs FREQ=YEARLY'))
  if (parts.has('BYSETPOS') && ![...parts.keys()].some(name => /^BY(?!SETPOS)/.test(name)))
    refuse(rule, say('BYSETPOS needs another BY part to choose from'))
}
