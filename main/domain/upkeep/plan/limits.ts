import { dateOfDay, dayNumber, dayNumberOf } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/** The days plans may speak of: no car outlives them, and no date worked out from them leaves the calendar. */
const FIRST_DAY = dayNumberOf(1970, 1, 1)
const LAST_DAY = dayNumberOf(2099, 12, 31)

/** How long a car may be away; for good is another thing (sold). */
export const LONGEST_AWAY_DAYS = 5 * 366

/** How far ahead visits are listed: past the longest interval of a rule. */
export const LISTED_AHEAD_DAYS = 25 * 366

/** Missed visits are counted so far; beyond, the number says nothing more. */
export const MOST_MISSED = 99

/** The day number of a date a plan or its records name. Refuses one outside 1970 to 2099. */
export function planDay(date: string, field: string): number {
  const day = dayNumber(date, field)
  if (day < FIRST_DAY || day > LAST_DAY)
    refuse(
      'date-far',
      { [field]: date },
      say('{date} is too far off for a plan; use a day from {first} to {last}.', {
        date,
        first: dateOfDay(FIRST_DAY),
        last: dateOfDay(LAST_DAY),
      }),
    )
  return day
}
