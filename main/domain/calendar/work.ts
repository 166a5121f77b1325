import { indexFrom, type Span } from './spans.ts'

/** How many opening minutes `[fromAt, toAt)` holds; none when it ends before it begins. */
export function openMinutesBetween(open: readonly Span[], fromAt: number, toAt: number): number {
  let sum = 0
  for (let i = indexFrom(open, fromAt); i < open.length && open[i]!.from < toAt; i++)
    sum += Math.max(0, Math.min(open[i]!.to, toAt) - Math.max(open[i]!.from, fromAt))
  return sum
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
