import { type Span, spanSet } from '../calendar/spans.ts'

/**
 * Opening hours laid end to end: `before[j]` opening minutes lie before opening `j`. Work that may pause at closing
 * is unbroken on this collapsed axis, which is what makes splits, and blocked minutes, a subtraction.
 */
export interface OpenTime {
  readonly from: readonly number[]
  readonly to: readonly number[]
  readonly before: readonly number[]
  readonly total: number
}

/** The collapsed axis of a shop's openings; openings that touch count as one. */
export function openTime(open: readonly Span[]): OpenTime {
  const set = spanSet(open)
  const before: number[] = []
  let total = 0
  for (const span of set) {
    before.push(total)
    total += span.to - span.from
  }
  return { from: set.map(span => span.from), to: set.map(span => span.to), before, total }
}

/** The first index whose value is at least `x` in a sorted list, or its length. */
export function firstAtLeast(sorted: readonly number[], x: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! < x) low = middle + 1
    else high = middle
  }
  return low
}

/** Opening minutes before the minute `t`. */
export function openBefore(hours: OpenTime, t: number): number {
  const j = firstAtLeast(hours.to, t)
  if (j === hours.to.length) return hours.total
  return hours.before[j]! + Math.max(0, t - hours.from[j]!)
}

/** The opening minutes in `[from, to)`. */
export function openBetween(hours: OpenTime, from: number, to: number): number {
  return openBefore(hours, to) - openBefore(hours, from)
}

/** Whether a car may come, move or go at `t`: the shop is open, the closing minute included. */
export function isDoorOpen(hours: OpenTime, t: number): boolean {
  const j = firstAtLeast(hours.to, t)
  return j < hours.to.length && hours.from[j]! <= t
}

/** The opening that holds the minute beginning at `t`, or -1. */
export function openingAt(hours: OpenTime, t: number): number {
  const j = firstAtLeast(hours.to, t + 1)
  return j < hours.to.length && hours.from[j]! <= t ? j : -1
}

/**
 * When work begun at `start` (an opening minute) has used `minutes` opening minutes: the instant its last minute is
 * done, so never later than that opening's close. Infinity where the openings do not last.
 */
export function endOfWork(hours: OpenTime, start: number, minutes: number): number {
  const done = openBefore(hours, start) + minutes
  if (done > hours.total) return Number.POSITIVE_INFINITY
  let j = firstAtLeast(hours.before, done) - 1
  if (j < 0) j = 0
  return hours.from[j]! + done - hours.before[j]!
}
