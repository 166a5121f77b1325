import { atWall, checkDate, dayLength, startOfDay, wallMinuteOf, zonedOf } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/** When an owner may be disturbed, on the owner's own clock. There is no standard for it: the shop sets it. */
export interface SendHours {
  /** Minutes after midnight; the end does not count. */
  readonly fromMin: number
  readonly toMin: number
  /** ISO weekdays, 1 Monday .. 7 Sunday, on which nothing goes out. */
  readonly closedWeekdays: readonly number[]
  /** `YYYY-MM-DD` on which nothing goes out. */
  readonly closedDates: readonly string[]
}

/** Refuses hours in which nothing could ever be sent, and dates that are none. */
export function checkSendHours(hours: SendHours): void {
  const whole = (minute: number) => Number.isInteger(minute) && minute >= 0 && minute <= 1440
  for (const name of ['fromMin', 'toMin'] as const)
    if (!whole(hours[name]))
      refuse(
        'wall-minute-bad',
        { [name]: hours[name] },
        say('{hours} is not a time of day; use whole minutes after midnight, 0 to 1440.', {
          hours: hours[name],
        }),
      )
  if (hours.fromMin >= hours.toMin)
    refuse(
      'hours-backwards',
      { toMin: hours.toMin },
      say('Sending hours must end after they begin, on the same day.'),
    )
  hours.closedWeekdays.forEach((weekday, i) => {
    if (!Number.isInteger(weekday) || weekday < 1 || weekday > 7)
      refuse(
        'weekday-bad',
        { [`closedWeekdays.${i}`]: weekday },
        say('{weekday} is not a weekday; use 1 for Monday to 7 for Sunday.', { weekday }),
      )
  })
  if (new Set(hours.closedWeekdays).size === 7)
    refuse(
      'never-open',
      { closedWeekdays: hours.closedWeekdays },
      say('With every weekday closed nothing can be sent; open one.'),
    )
  hours.closedDates.forEach((date, i) => {
    checkDate(date, `closedDates.${i}`)
  })
}

/**
 * The first minute at or after `at` in which a message may go out, by what the owner's clock in `zone` shows; `at`
 * itself when it is one. Null when the next two years are closed.
 */
export function nextSendAt(at: number, hours: SendHours, zone: string): number | null {
  const closed = new Set(hours.closedDates)
  let day = zonedOf(at, zone).toPlainDate()
  for (let n = 0; n < 731; n++) {
    const date = day.toString()
    if (!hours.closedWeekdays.includes(day.dayOfWeek) && !closed.has(date)) {
      const sendAt = firstOfDay(date, at, hours, zone)
      if (sendAt !== null) return sendAt
    }
    day = day.add({ days: 1 })
  }
  return null
}

/** The first minute of one date, from `at` on, at which the clock shows a time in the hours. */
function firstOfDay(date: string, at: number, { fromMin, toMin }: SendHours, zone: string): number | null {
  if (dayLength(date, zone) === 1440) {
    const sendAt = Math.max(at, atWall(date, fromMin, zone))
    return sendAt < atWall(date, toMin, zone) ? sendAt : null
  }
  // The clock changes on this date: it may show a time twice, or not at all, so it is read minute by minute.
  const endAt = startOfDay(Temporal.PlainDate.from(date).add({ days: 1 }).toString(), zone)
  for (let minute = Math.max(at, startOfDay(date, zone)); minute < endAt; minute++) {
    const wall = wallMinuteOf(minute, zone)
    if (wall >= fromMin && wall < toMin) return minute
  }
  return null
}
