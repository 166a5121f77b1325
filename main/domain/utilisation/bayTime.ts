import { clip, difference, intersection, minutesIn, type Span, spanSet } from '../calendar/index.ts'

/** A car's time in one bay: from when to when it stood there, and what was done in it; epoch minutes. */
export interface BayVisit extends Span {
  readonly work: readonly Span[]
  readonly holds: readonly Span[]
}

/** How a bay's minutes were used. The first three add up to its opening minutes. */
export interface TimeUsed {
  /** Somebody worked on the car. */
  readonly handsOnMin: number
  /** Opening minutes in which a car stood there and nobody worked on it. */
  readonly blockedMin: number
  /** Opening minutes in which it stood empty. */
  readonly idleMin: number
  /** Cure while the shop was closed: it costs nothing. */
  readonly freeCureMin: number
}

/**
 * How one bay's time from `fromAt` to `toAt` was used. `open`: the shop's opening hours; `closed`: when the bay could
 * not be used, which counts as neither open nor idle. Two cars at once count once.
 */
export function bayTime(
  {
    fromAt,
    toAt,
    open,
    closed,
  }: { fromAt: number; toAt: number; open: readonly Span[]; closed: readonly Span[] },
  visits: readonly BayVisit[],
): TimeUsed {
  const within = (spans: readonly Span[]) => clip(spanSet([...spans]), fromAt, toAt)
  const usable = difference(within(open), within(closed))
  const taken = within(visits)
  const work = intersection(
    within(visits.flatMap(visit => clip(spanSet([...visit.work]), visit.from, visit.to))),
    usable,
  )
  const holds = within(visits.flatMap(visit => clip(spanSet([...visit.holds]), visit.from, visit.to)))
  const handsOnMin = minutesIn(work)
  return {
    handsOnMin,
    blockedMin: minutesIn(intersection(usable, taken)) - handsOnMin,
    idleMin: minutesIn(difference(usable, taken)),
    freeCureMin: minutesIn(difference(holds, within(open))),
  }
}
