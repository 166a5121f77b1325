/** When a shop is open, as it is written down: wall times by weekday, and dates that differ. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { wallWords } from './clockWords.ts'
import { checkDate, checkZone } from './instants.ts'
import type { Span } from './spans.ts'

export interface WallSpan {
  /** Minutes after midnight on the shop's clock, 0..1439. */
  readonly from: number
  /** 1..1440; 1440 is midnight at the day's end. */
  readonly to: number
}

/** One opening of a weekday; a weekday may have several, a closed one has none. */
export interface OpeningHours extends WallSpan {
  /** ISO: 1 Monday .. 7 Sunday. */
  readonly weekday: number
}

/** The hours of one date instead of its weekday's; no hours at all: closed. */
export interface HoursException {
  /** `YYYY-MM-DD` */
  readonly date: string
  readonly hours: readonly WallSpan[]
}

export interface ShopCalendar {
  /** IANA name. */
  readonly zone: string
  readonly weekly: readonly OpeningHours[]
  readonly exceptions: readonly HoursException[]
}

/** Refuses a calendar nobody can keep: unknown zone, bad times, openings that overlap, a date given twice. */
export function checkCalendar(calendar: ShopCalendar): void {
  checkZone(calendar.zone)
  checkWeekly(calendar.weekly)
  const seen = new Set<string>()
  calendar.exceptions.forEach((exception, i) => {
    const field = `exceptions.${i}`
    checkDate(exception.date, `${field}.date`)
    if (seen.has(exception.date))
      refuse(
        'date-twice',
        { [`${field}.date`]: exception.date },
        say('{date} has two entries; put all its hours in one.', { date: exception.date }),
      )
    seen.add(exception.date)
    checkWallSpans(exception.hours, `${field}.hours`, say('on {date}', { date: exception.date }))
  })
}

/** Refuses weekly hours with a bad weekday, bad times, or two openings of a weekday that overlap. */
export function checkWeekly(weekly: readonly OpeningHours[], field = 'weekly'): void {
  weekly.forEach(({ weekday }, i) => {
    if (!Number.isInteger(weekday) || weekday < 1 || weekday > 7)
      refuse(
        'weekday-bad',
        { [`${field}.${i}.weekday`]: weekday },
        say('{weekday} is not a weekday; use 1 for Monday to 7 for Sunday.', { weekday }),
      )
  })
  checkWallSpans(weekly, field, say('on one weekday'))
}

function checkWallSpans(spans: readonly (WallSpan & { weekday?: number })[], field: string, where: string) {
  spans.forEach((span, i) => {
    checkWallMinute(span.from, `${field}.${i}.from`)
    checkWallMinute(span.to, `${field}.${i}.to`)
    if (span.from >= span.to)
      refuse(
        'hours-backwards',
        { [`${field}.${i}.to`]: span.to },
        say(
          'Closing at {to} is not after opening at {from}; for hours past midnight, end one day at {end} and begin the next at {start}.',
          {
            to: wallWords(span.to),
            from: wallWords(span.from),
            end: wallWords(1440),
            start: wallWords(0),
          },
        ),
      )
    for (let j = 0; j < i; j++) {
      const other = spans[j]!
      if (other.weekday === span.weekday && other.from < span.to && span.from < other.to)
        refuse(
          'hours-overlap',
          { [`${field}.${i}.from`]: span.from },
          say('{from} to {to} overlaps {from2} to {to2} {where}; join them or move one.', {
            from: wallWords(span.from),
            to: wallWords(span.to),
            from2: wallWords(other.from),
            to2: wallWords(other.to),
            where,
          }),
        )
    }
  })
}

function checkWallMinute(minute: number, field: string) {
  if (!Number.isInteger(minute) || minute < 0 || minute > 1440)
    refuse(
      'wall-minute-bad',
      { [field]: minute },
      say('{minute} is not a time of day; use whole minutes after midnight, 0 to 1440.', { minute }),
    )
}

/** Refuses spans of real time (a bay's closures, a person's absences) that end before they begin, or overlap. */
export function checkClosures(closures: readonly Span[], field = 'closures'): void {
  closures.forEach((span, i) => {
    for (const end of ['from', 'to'] as const)
      if (!Number.isSafeInteger(span[end]))
        refuse(
          'minute-bad',
          { [`${field}.${i}.${end}`]: span[end] },
          say('{span} is not a whole minute; give the date and time again.', { span: span[end] }),
        )
    if (span.from >= span.to)
      refuse(
        'closure-backwards',
        { [`${field}.${i}.to`]: span.to },
        say('{to} is not after {from}; let it end after it begins.', {
          to: said(span.to),
          from: said(span.from),
        }),
      )
  })
  const sorted = closures.map((span, i) => ({ ...span, i })).sort((a, b) => a.from - b.from)
  for (let k = 1; k < sorted.length; k++) {
    const earlier = sorted[k - 1]!
    const later = sorted[k]!
    if (later.from < earlier.to)
      refuse(
        'closure-overlap',
        { [`${field}.${later.i}.from`]: later.from },
        say('It begins {from}, before the one that ends {to}; join them or move one.', {
          from: said(later.from),
          to: said(earlier.to),
        }),
      )
  }
}

function said(at: number): string {
  return Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString({ smallestUnit: 'minute' })
}
