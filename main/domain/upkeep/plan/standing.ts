import { dayNumber } from '../recurrence/dayNumber.ts'
import type { Plan, VisitRecord } from './plan.ts'

/** Where a plan stands after all that was written down, in day numbers. */
export interface PlanStanding {
  /** The day the rule counts from. */
  readonly start: number
  /** Visits up to this day are closed. */
  readonly after: number
  /** The last visit done, null before the first. */
  readonly lastDone: number | null
  /** Visits skipped, by the day the rule gave them. */
  readonly skipped: ReadonlySet<number>
  /** Visits moved and still open: the rule's day to the day agreed. */
  readonly moved: ReadonlyMap<number, { readonly to: number; readonly why: string | null }>
}

const NONE: ReadonlySet<number> = new Set()
const UNMOVED: PlanStanding['moved'] = new Map()

/**
 * Reads a plan's records. A plan anchored to the last visit done starts afresh with each one, early or late, and what
 * was skipped or moved before it is over. One anchored to a date goes on by its dates whenever its visits are done.
 */
export function standingOf(plan: Plan, records: readonly VisitRecord[]): PlanStanding {
  const byDate = plan.anchor.to === 'date'
  let start = plan.anchor.to === 'date' ? dayNumber(plan.anchor.on) : dayNumber(plan.anchor.since)
  let after = byDate ? start - 1 : start
  if (records.length === 0) return { start, after, lastDone: null, skipped: NONE, moved: UNMOVED }
  let lastDone: number | null = null
  const skipped = new Set<number>()
  const moved = new Map<number, { to: number; why: string | null }>()
  for (const record of records) {
    if (record.what === 'done') {
      const on = dayNumber(record.on)
      if (byDate) {
        lastDone = Math.max(lastDone ?? on, on)
        if (record.dueOn !== null) after = Math.max(after, dayNumber(record.dueOn))
      } else if (on >= start) {
        lastDone = on
        start = on
        after = on
        skipped.clear()
        moved.clear()
      }
    } else if (record.what === 'skipped') {
      skipped.add(dayNumber(record.dueOn))
      moved.delete(dayNumber(record.dueOn))
    } else moved.set(dayNumber(record.dueOn), { to: dayNumber(record.to), why: record.why ?? null })
  }
  // With a last-done anchor one visit is open at a time: skipping it skips to the next the rule names, also when the
  // rule was changed since and no longer names the very day that was skipped.
  if (!byDate) for (const day of skipped) after = Math.max(after, day)
  return { start, after, lastDone, skipped, moved }
}
