/** Hands-on minutes laid into openings. `open` is always a set as `openSpans` returns it. */
import { Refusal } from '../refusal.ts'
import { indexFrom, type Span, spanAt } from './spans.ts'

/** How many opening minutes `[fromAt, toAt)` holds; none when it ends before it begins. */
export function openMinutesBetween(open: readonly Span[], fromAt: number, toAt: number): number {
  let sum = 0
  for (let i = indexFrom(open, fromAt); i < open.length && open[i]!.from < toAt; i++)
    sum += Math.max(0, Math.min(open[i]!.to, toAt) - Math.max(open[i]!.from, fromAt))
  return sum
}

/**
 * When `minutes` hands-on minutes begun at `startAt` are done: the instant the last of them is over. Work that is
 * `splittable` pauses at closing and goes on at the next opening; other work must lie in one opening.
 * Null where it cannot be: `startAt` is not an opening minute, the opening is too short, or `open` runs out.
 * @throws Refusal when `minutes` is negative or not whole.
 */
export function endOfWork(
  open: readonly Span[],
  startAt: number,
  minutes: number,
  splittable: boolean,
): number | null {
  if (!Number.isSafeInteger(minutes) || minutes < 0)
    throw new Refusal(
      'minutes-bad',
      'minutes',
      minutes,
      `${minutes} is not a duration; use whole minutes, 0 or more.`,
    )
  const opening = spanAt(open, startAt)
  if (!opening) return null
  if (startAt + minutes <= opening.to) return startAt + minutes
  if (!splittable) return null
  let left = minutes - (opening.to - startAt)
  for (let i = indexFrom(open, opening.to); i < open.length; i++) {
    const { from, to } = open[i]!
    if (from + left <= to) return from + left
    left -= to - from
  }
  return null
}

/**
 * The first minute at or after `at` that is an opening minute, or null when `open` runs out. With `closingCounts` the
 * closing minute itself serves too, as it does for a drop-off or a handover.
 */
export function firstOpenAt(open: readonly Span[], at: number, closingCounts = false): number | null {
  const i = indexFrom(open, at)
  if (closingCounts && i > 0 && open[i - 1]!.to === at) return at
  const opening = open[i]
  return opening ? Math.max(at, opening.from) : null
}
