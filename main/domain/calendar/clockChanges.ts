import { instantOf, minuteOf } from './instants.ts'

export interface ClockChange {
  /** The first epoch minute on the new offset. */
  readonly at: number
  /** Minutes ahead of UTC before and after. */
  readonly offsetBeforeMin: number
  readonly offsetAfterMin: number
}

const NS_PER_MINUTE = 60_000_000_000

/** The clock changes of `zone` in `[fromAt, toAt)`, in order. */
export function clockChanges(zone: string, fromAt: number, toAt: number): ClockChange[] {
  const changes: ClockChange[] = []
  // One minute early, because the search excludes the instant it starts from.
  let time: Temporal.ZonedDateTime | null = instantOf(fromAt - 1).toZonedDateTimeISO(zone)
  for (;;) {
    time = time.getTimeZoneTransition('next')
    if (!time) return changes
    const at = minuteOf(time)
    if (at >= toAt) return changes
    const before = instantOf(at - 1).toZonedDateTimeISO(zone)
    changes.push({
      at,
      offsetBeforeMin: before.offsetNanoseconds / NS_PER_MINUTE,
      offsetAfterMin: time.offsetNanoseconds / NS_PER_MINUTE,
    })
  }
}
