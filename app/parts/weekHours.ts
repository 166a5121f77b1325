import type { OpeningHours, WallSpan } from '../../main/domain/calendar/index.ts'
import { say, weekdaysNow } from '../../main/domain/language/index.ts'
import { wallText } from './wallText.ts'

const fromMonday = [
  { weekday: 1, name: say('Monday'), short: say('Mon') },
  { weekday: 2, name: say('Tuesday'), short: say('Tue') },
  { weekday: 3, name: say('Wednesday'), short: say('Wed') },
  { weekday: 4, name: say('Thursday'), short: say('Thu') },
  { weekday: 5, name: say('Friday'), short: say('Fri') },
  { weekday: 6, name: say('Saturday'), short: say('Sat') },
  { weekday: 7, name: say('Sunday'), short: say('Sun') },
] as const

/** The weekdays, from the first of the shop's week on. */
export function weekdays() {
  return weekdaysNow().map(weekday => fromMonday[weekday - 1]!)
}

/** The same to choose from. */
export function weekdayChoices() {
  return weekdays().map(({ weekday, short }) => ({ value: String(weekday), label: short }))
}

/** Monday to Friday, 08:00 to 18:00: what a form begins with. */
export const usualWeek: OpeningHours[] = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 }))

/** The openings of one weekday with their place in the week's list. */
export function hoursOf(weekly: readonly OpeningHours[], weekday: number) {
  return weekly.flatMap((hours, index) => (hours.weekday === weekday ? [{ ...hours, index }] : []))
}

/** The week with one weekday's openings copied to others. */
export function copyDay(
  weekly: readonly OpeningHours[],
  from: number,
  to: readonly number[],
): OpeningHours[] {
  const model = weekly.filter(hours => hours.weekday === from)
  return [
    ...weekly.filter(hours => !to.includes(hours.weekday)),
    ...to.flatMap(weekday => model.map(hours => ({ ...hours, weekday }))),
  ]
}

/** "08:00 to 12:00, 13:00 to 18:00", or "closed". */
export function spansWords(spans: readonly WallSpan[]): string {
  if (spans.length === 0) return say('closed')
  return spans
    .map(span => say('{from} to {to}', { from: wallText(span.from), to: wallText(span.to) }))
    .join(', ')
}

/** "Mon to Fri 08:00 to 18:00, Sat 09:00 to 13:00": days of equal hours together. */
export function weekWords(weekly: readonly OpeningHours[]): string {
  const runs: { first: string; last: string; words: string }[] = []
  for (const { weekday, short } of weekdays()) {
    const spans = hoursOf(weekly, weekday).sort((a, b) => a.from - b.from)
    const words = spansWords(spans)
    const run = runs.at(-1)
    if (run?.words === words) run.last = short
    else runs.push({ first: short, last: short, words })
  }
  const open = runs.filter(run => run.words !== say('closed'))
  if (open.length === 0) return say('never open')
  return open
    .map(
      ({ first, last, words }) =>
        `${first === last ? first : say('{first} to {last}', { first, last })} ${words}`,
    )
    .join(', ')
}
