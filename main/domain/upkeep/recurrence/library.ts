import * as imported from 'rrule'
import { dayNumberOf } from '../../calendar/index.ts'

/** Node loads the package's CommonJS build, with everything under `default`; a bundler its module build. */
const { default: commonJs } = imported as { default?: Pick<typeof imported, 'RRule'> }
const { RRule } = commonJs ?? imported

/** The package knows no later year; an interval that leads beyond it ends the walk after one period. */
const PAST_THE_LAST_YEAR = 10_000

const DAY_MS = 86_400_000

/**
 * The days, as day numbers in order, that an RFC 5545 rule of `FREQ=MONTHLY` or `YEARLY` names in the one month or year
 * that begins here. `rule` carries neither INTERVAL nor COUNT, UNTIL or BYSETPOS, and its BYDAY is either all counted
 * (1MO) or all plain: the package takes a mixture for an intersection. It computes in `Date`s whose UTC fields are the
 * calendar's, so the zone of the machine never enters.
 */
export function daysNamed(rule: string, year: number, month: number): number[] {
  const options = RRule.parseString(rule)
  const first = new Date(dayNumberOf(year, month, 1) * DAY_MS)
  const months = options.freq === RRule.MONTHLY ? 12 : 1
  return new RRule({ ...options, dtstart: first, interval: PAST_THE_LAST_YEAR * months })
    .all()
    .map(date => date.getTime() / DAY_MS)
}
