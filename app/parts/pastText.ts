import { atWall, dateOf, readDate } from '../../main/domain/calendar/index.ts'
import { readWall } from './wallText.ts'

/**
 * The minute at which something happened, as somebody types it: a time of today ("10:40", "5 pm"), one of the day
 * before ("yesterday 17:30", "gestern 17:30"), or one of a day ("2026-04-14 17:30", "14.4.2026 17:30", "4/14/2026 5:30 pm" in the
 * order of the shop); null when it is none. The time is the wall clock's in `zone`; what the clock showed twice is the later one that is not still to come.
 */
export function readPast(text: string, nowAt: number, zone: string): number | null {
  const parts = /^(?:(yesterday|gestern|\d{4}-\d{2}-\d{2}|\d{1,2}[./-]\d{1,2}[./-]\d{4})[ t,]+)?(.+)$/.exec(
    text.trim().toLowerCase().replaceAll('\u00a0', ' '),
  )
  const wall = parts && readWall(parts[2]!)
  if (!parts || wall === null) return null
  const today = dateOf(nowAt, zone)
  const date = parts[1] === undefined ? today : dayOf(parts[1], today)
  if (date === null) return null
  const first = atWall(date, wall!, zone)
  const second = repeated(date, wall!, zone)
  return second !== null && second <= nowAt ? second : first
}

function dayBefore(date: string): string {
  return Temporal.PlainDate.from(date).subtract({ days: 1 }).toString()
}

function dayOf(text: string, today: string): string | null {
  if (text === 'yesterday' || text === 'gestern') return dayBefore(today)
  return readDate(text)
}

/** The second minute at which the clock shows this time, on a night it is set back; null on all others. */
function repeated(date: string, wall: number, zone: string): number | null {
  const clock = Temporal.PlainDate.from(date).toPlainDateTime().add({ minutes: wall })
  const [early, late] = (['earlier', 'later'] as const).map(disambiguation =>
    clock.toZonedDateTime(zone, { disambiguation }),
  )
  const twice = early!.epochMilliseconds !== late!.epochMilliseconds && late!.toPlainDateTime().equals(clock)
  return twice ? late!.epochMilliseconds / 60_000 : null
}
