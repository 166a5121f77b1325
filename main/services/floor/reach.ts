import { checkDate, startOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'

/** How far ahead the floor is looked at, in minutes: past everything that can be booked, and no more. */
export const farthestMin = 3 * 366 * 1440

/** @throws Refusal for what is no day, and for one so far ahead that the floor is not worked out for it. */
export function checkShown(date: string, field: string, nowAt: number): void {
  checkDate(date, field)
  if (startOfDay(date, 'UTC') > nowAt + farthestMin)
    refuse(
      'date-far',
      { [field]: date },
      say('{date} is too far off; look at most three years ahead.', { date }),
    )
}
