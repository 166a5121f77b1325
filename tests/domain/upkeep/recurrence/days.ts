import { dateOfDay, dayNumber } from '../../../../main/domain/calendar/index.ts'
import { dayRule } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'

/** The first days of a rule from a start day on, up to a last day, as dates. */
export function daysOf(
  rule: string,
  start: string,
  most: number,
  zone = 'UTC',
  last = '2200-01-01',
): string[] {
  const days = dayRule(rule, zone)
  const from = dayNumber(start)
  const to = dayNumber(last)
  const found: string[] = []
  let day = days.next(from, from - 1)
  while (day !== null && day <= to && found.length < most) {
    found.push(dateOfDay(day))
    day = days.next(from, day)
  }
  return found
}

/** The same, but always by the RFC's own expansion: its default WKST takes a rule off the plain count. */
export function rfcDaysOf(rule: string, start: string, most: number, zone?: string, last?: string): string[] {
  return daysOf(rule.includes('WKST') ? rule : `${rule};WKST=MO`, start, most, zone, last)
}
