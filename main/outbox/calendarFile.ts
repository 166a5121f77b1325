/** iCalendar files (RFC 5545): times in UTC, so that they need no zone of their own; whole days as dates. */

import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator'

export interface CalendarEvent {
  /** The same for the same thing, in every file it appears in. */
  readonly id: string
  readonly summary: string
  readonly description?: string | undefined
  readonly location?: string | undefined
  /** `[from, to)` in epoch minutes, or whole days `YYYY-MM-DD` with the day after the last. */
  readonly time:
    | { readonly fromAt: number; readonly toAt: number }
    | { readonly fromOn: string; readonly untilOn: string }
  readonly status: 'confirmed' | 'tentative'
}

/** The events as a file. `madeAt` is the epoch minute of the making: the same content gives the same bytes. */
export function calendarFile(
  name: string,
  madeAt: number,
  events: readonly CalendarEvent[],
  method: 'publish' | null = null,
): string {
  // The library writes the name as it is given.
  const shown = oneLine(name).replaceAll(/[\\;,]/g, '\\$&')
  const calendar = ical({
    name: shown,
    prodId: { company: 'Lustrum', product: 'upkeep', language: 'EN' },
  })
  if (method) calendar.method(ICalCalendarMethod.PUBLISH)
  const stamp = instant(madeAt)
  // A feed has thousands of events on a few hundred days.
  const days = new Map<string, Date>()
  const day = (on: string) => {
    const known = days.get(on) ?? new Date(`${on}T00:00:00Z`)
    days.set(on, known)
    return known
  }
  for (const { id, summary, description, location, time, status } of events) {
    const [start, end, allDay] =
      'fromAt' in time
        ? [instant(time.fromAt), instant(time.toAt), false]
        : [day(time.fromOn), day(time.untilOn), true]
    calendar.createEvent({
      id,
      start,
      end,
      allDay,
      stamp,
      summary: oneLine(summary),
      ...(description !== undefined && { description }),
      ...(location !== undefined && { location: oneLine(location) }),
      status: status === 'confirmed' ? ICalEventStatus.CONFIRMED : ICalEventStatus.TENTATIVE,
    })
  }
  return `${calendar.toString()}\r\n`
}

function instant(at: number): Date {
  return new Date(at * 60_000)
}

/** A summary is one line in every calendar program. */
function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim()
}
