import {
  dateOf,
  hourWords,
  minuteOf,
  type Span,
  startOfDay,
  zonedOf,
} from '../../main/domain/calendar/index.ts'

export interface DayHead {
  date: string
  fromAt: number
  toAt: number
}

export interface HourTick {
  at: number
  label: string
}

/** The days an axis covers, each from one midnight of the shop to the next. */
export function dayHeads(fromAt: number, toAt: number, zone: string): DayHead[] {
  const days: DayHead[] = []
  let date = dateOf(fromAt, zone)
  for (;;) {
    const from = startOfDay(date, zone)
    if (from >= toAt) return days
    const next = Temporal.PlainDate.from(date).add({ days: 1 }).toString()
    days.push({ date, fromAt: Math.max(from, fromAt), toAt: Math.min(startOfDay(next, zone), toAt) })
    date = next
  }
}

/**
 * The full hours of the shop's clock that get a line: every `everyHours` inside opening hours, their two ends
 * included. On the night of a clock change the hours are those the wall clock shows.
 */
export function hourTicks(open: readonly Span[], everyHours: number, zone: string): HourTick[] {
  const ticks = new Map<number, string>()
  for (const span of open) {
    let time = zonedOf(span.from, zone).round({ smallestUnit: 'hour', roundingMode: 'ceil' })
    while (minuteOf(time) <= span.to) {
      if (time.hour % everyHours === 0) ticks.set(minuteOf(time), hourWords(time.hour))
      time = time.add({ hours: 1 })
    }
  }
  return [...ticks].map(([at, label]) => ({ at, label })).sort((a, b) => a.at - b.at)
}
