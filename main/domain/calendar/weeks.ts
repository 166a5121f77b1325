/** The weeks of a shop, which begin on the weekday it chose. */
import { isoWeek } from './days.ts'

/**
 * The first day of the week that a date lies in, both `YYYY-MM-DD`.
 * @param begins the weekday weeks begin on, 1 for Monday to 7 for Sunday
 */
export function weekStart(date: string, begins: number): string {
  const day = Temporal.PlainDate.from(date)
  return day.subtract({ days: (day.dayOfWeek - begins + 7) % 7 }).toString()
}

/**
 * The number (1..53) of the week that begins on this day. One that begins on a Monday is counted as ISO 8601 has it: week 1 has
 * the year's first Thursday. Any other as is usual where weeks begin on a Sunday or Saturday: week 1 has the first of
 * January (Unicode CLDR, supplemental/weekData, minDays of the world and of the United States: 1).
 */
export function weekNumber(beginsOn: string): number {
  const first = Temporal.PlainDate.from(beginsOn)
  if (first.dayOfWeek === 1) return isoWeek(beginsOn).isoWeek
  const { year } = first.add({ days: 6 })
  const weekOne = weekStart(`${year}-01-01`, first.dayOfWeek)
  return Temporal.PlainDate.from(weekOne).until(first, { largestUnit: 'day' }).days / 7 + 1
}
