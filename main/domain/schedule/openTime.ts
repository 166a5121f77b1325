import { firstWhere } from '../calendar/search.ts'
import { type Span, spanSet } from '../calendar/spans.ts'

/** One opening of the shop, and the opening minutes `before` it. */
export interface Opening extends Span {
  readonly before: number
}

/**
 * Opening hours laid end to end. Work that may pause at closing is unbroken on this collapsed axis, which is what
 * makes splits, and blocked minutes, a subtraction.
 */
export interface OpenTime {
  readonly openings: readonly Opening[]
  /** Opening minutes in all. */
  readonly total: number
}

/** The collapsed axis of a shop's openings; openings that touch count as one. */
export function openTime(open: readonly Span[]): OpenTime {
  let total = 0
  const openings = spanSet(open).map(({ from, to }) => {
    const before = total
    total += to - from
    return { from, to, before }
  })
  return { openings, total }
}

/** The first of some sorted spans that ends at or after `t`: its index, or their number. */
export function firstEndingFrom(spans: readonly Span[], t: number): number {
  return firstWhere(spans, span => span.to >= t)
}

/** Those of some sorted spans that share a point with `from` to `to`, ends included. */
export function touching<T extends Span>(spans: readonly T[], from: number, to: number): T[] {
  const found: T[] = []
  for (let i = firstEndingFrom(spans, from), span = spans[i]; span && span.from <= to; span = spans[++i])
    found.push(span)
  return found
}

/** Opening minutes before the minute `t`. */
export function openBefore({ openings, total }: OpenTime, t: number): number {
  const opening = openings[firstEndingFrom(openings, t)]
  return opening ? opening.before + Math.max(0, t - opening.from) : total
}

/** The opening minutes in `[from, to)`. */
export function openBetween(hours: OpenTime, from: number, to: number): number {
  return openBefore(hours, to) - openBefore(hours, from)
}

/** Whether a car may come, move or go at `t`: the shop is open, the closing minute included. */
export function isDoorOpen({ openings }: OpenTime, t: number): boolean {
  const opening = openings[firstEndingFrom(openings, t)]
  return opening !== undefined && opening.from <= t
}

/** The first minute at or after `t` at which the doors are open, or undefined where there is none. */
export function nextDoor({ openings }: OpenTime, t: number): number | undefined {
  const opening = openings[firstEndingFrom(openings, t)]
  return opening && Math.max(t, opening.from)
}

/** The opening that holds the minute beginning at `t`. */
export function openingAt({ openings }: OpenTime, t: number): Opening | undefined {
  const opening = openings[firstEndingFrom(openings, t + 1)]
  return opening && opening.from <= t ? opening : undefined
}

/** The index of the opening in which the collapsed axis passes its `minutes`th minute; the first for none. */
export function openingOfMinute({ openings }: OpenTime, minutes: number): number {
  return Math.max(0, firstWhere(openings, opening => opening.before >= minutes) - 1)
}

/** The minutes from the `from`th worked minute of work begun at `start` (an opening minute) to `minutes` after it. */
export function partOfWork(
  hours: OpenTime,
  start: number,
  { from, minutes }: { readonly from: number; readonly minutes: number },
): Span {
  return { from: endOfWork(hours, start, from + 1) - 1, to: endOfWork(hours, start, from + minutes) }
}

/**
 * When work begun at `start` (an opening minute) has used `minutes` opening minutes: the instant its last minute is
 * done, so never later than that opening's close. Infinity where the openings do not last.
 */
export function endOfWork(hours: OpenTime, start: number, minutes: number): number {
  const done = openBefore(hours, start) + minutes
  const last = hours.openings[openingOfMinute(hours, done)]
  return last && done <= hours.total ? last.from + done - last.before : Number.POSITIVE_INFINITY
}
