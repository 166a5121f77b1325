import { Refusal } from '../../refusal.ts'

export type Frequency = 'SECONDLY' | 'MINUTELY' | 'HOURLY' | 'DAILY' | 'WEEKLY' | 'MONTHLY' | 'YEARLY'

/** A recurrence rule taken apart: the frequency, and every other part by its name, as written. */
export interface RuleParts {
  readonly frequency: Frequency
  readonly parts: ReadonlyMap<string, string>
}

const FREQUENCIES = ['SECONDLY', 'MINUTELY', 'HOURLY', 'DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY']
const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']

/** Least and most of each list part, and whether its figures may count from the end. */
const LISTS: Readonly<Record<string, readonly [number, number, boolean]>> = {
  BYSECOND: [0, 60, false],
  BYMINUTE: [0, 59, false],
  BYHOUR: [0, 23, false],
  BYMONTHDAY: [1, 31, true],
  BYYEARDAY: [1, 366, true],
  BYWEEKNO: [1, 53, true],
  BYMONTH: [1, 12, false],
  BYSETPOS: [1, 366, true],
}

function refuse(rule: string, why: string): never {
  throw new Refusal('rule-bad', 'rule', rule, `"${rule}" is not a recurrence rule: ${why}.`)
}

/**
 * Takes an RFC 5545 recurrence rule apart, refusing what section 3.3.10 does not allow. Stricter than the library,
 * which passes over parts it cannot read: a plan with a slip in it must not quietly mean another one.
 */
export function ruleParts(rule: string): RuleParts {
  const parts = new Map<string, string>()
  for (const piece of rule.replace(/^RRULE:/, '').split(';')) {
    const [, name, value] = /^([A-Z]+)=(.+)$/.exec(piece) ?? refuse(rule, `"${piece}" is not NAME=VALUE`)
    if (parts.has(name!)) refuse(rule, `${name} is there twice`)
    parts.set(name!, value!)
  }
  const frequency = parts.get('FREQ') ?? refuse(rule, 'FREQ is missing, such as FREQ=MONTHLY')
  if (!FREQUENCIES.includes(frequency)) refuse(rule, `FREQ=${frequency} is none of ${FREQUENCIES.join(', ')}`)
  if (parts.has('COUNT') && parts.has('UNTIL')) refuse(rule, 'COUNT and UNTIL exclude each other')
  for (const [name, value] of parts) checkPart(rule, name, value)
  checkTogether(rule, frequency, parts)
  return { frequency: frequency as Frequency, parts }
}

function checkPart(rule: string, name: string, value: string) {
  if (name === 'FREQ') return
  if (name === 'INTERVAL' || name === 'COUNT') {
    if (!/^[1-9]\d{0,5}$/.test(value)) refuse(rule, `${name}=${value} is not a whole number from 1 up`)
  } else if (name === 'UNTIL') {
    if (!/^\d{8}(T\d{6}Z?)?$/.test(value))
      refuse(rule, `UNTIL=${value} is neither a date (20261231) nor a time (20261231T080000Z)`)
  } else if (name === 'WKST') {
    if (!WEEKDAYS.includes(value)) refuse(rule, `WKST=${value} is none of ${WEEKDAYS.join(', ')}`)
  } else if (name === 'BYDAY') {
    for (const day of value.split(',')) {
      const [, sign, figure, weekday] = /^([+-]?)(\d{1,2})?([A-Z]{2})$/.exec(day) ?? []
      if (!weekday || !WEEKDAYS.includes(weekday) || (sign && !figure) || Number(figure ?? 1) < 1)
        refuse(rule, `${day} is no weekday such as MO, 1MO or -1FR`)
      if (Number(figure ?? 1) > 53) refuse(rule, `${day} counts further than 53`)
    }
  } else {
    const [least, most, signed] = LISTS[name] ?? refuse(rule, `${name} is no part of a rule`)
    for (const figure of value.split(',')) {
      const size = Number(figure.replace(/^[+-]/, ''))
      if (!/^[+-]?\d{1,3}$/.test(figure) || size < least || size > most || (/^[+-]/.test(figure) && !signed))
        refuse(
          rule,
          `${name} takes ${least} to ${most}${signed ? ', or from the end with a minus' : ''}, not ${figure}`,
        )
    }
  }
}

/** What section 3.3.10 says must not stand together. */
function checkTogether(rule: string, frequency: string, parts: ReadonlyMap<string, string>) {
  const byDay = parts.get('BYDAY')
  if (byDay && /\d/.test(byDay)) {
    if (frequency !== 'MONTHLY' && frequency !== 'YEARLY')
      refuse(rule, 'a counted weekday (1MO) needs FREQ=MONTHLY or YEARLY')
    if (parts.has('BYWEEKNO')) refuse(rule, 'a counted weekday (1MO) cannot go with BYWEEKNO')
  }
  if (parts.has('BYMONTHDAY') && frequency === 'WEEKLY') refuse(rule, 'BYMONTHDAY cannot go with FREQ=WEEKLY')
  if (parts.has('BYYEARDAY') && ['DAILY', 'WEEKLY', 'MONTHLY'].includes(frequency))
    refuse(rule, `BYYEARDAY cannot go with FREQ=${frequency}`)
  if (parts.has('BYWEEKNO') && frequency !== 'YEARLY') refuse(rule, 'BYWEEKNO needs FREQ=YEARLY')
  if (parts.has('BYSETPOS') && ![...parts.keys()].some(name => /^BY(?!SETPOS)/.test(name)))
    refuse(rule, 'BYSETPOS needs another BY part to choose from')
}
