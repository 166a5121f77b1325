import { dayNumber } from '../../calendar/index.ts'
import { planDay } from './limits.ts'
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
  return plan.anchor.to === 'date'
    ? standingByDates(plan.anchor.on, records)
    : standingFromLast(plan.anchor.since, records)
}

function standingByDates(on: string, records: readonly VisitRecord[]): PlanStanding {
  const start = planDay(on, 'anchor.on')
  if (records.length === 0) return { start, after: start - 1, lastDone: null, skipped: NONE, moved: UNMOVED }
  let after = start - 1
  let lastDone: number | null = null
  for (const record of records)
    if (record.what === 'done') {
      const day = dayNumber(record.on)
      lastDone = Math.max(lastDone ?? day, day)
      if (record.dueOn !== null) after = Math.max(after, dayNumber(record.dueOn))
    }
  return { start, after, lastDone, ...openChanges(records) }
}

function standingFromLast(since: string, records: readonly VisitRecord[]): PlanStanding {
  // Dates written year first compare as they are; ten thousand cars have hundreds of thousands of them.
  let from = since
  let next = 0
  records.forEach((record, i) => {
    if (record.what !== 'done' || record.on < from) return
    from = record.on
    next = i + 1
  })
  const start = planDay(from, 'anchor.since')
  const lastDone = next > 0 ? start : null
  if (next === records.length) return { start, after: start, lastDone, skipped: NONE, moved: UNMOVED }
  const changes = openChanges(records.slice(next))
  // One visit is open at a time: skipping it skips to the next the rule names, also when the rule was changed since and
  // no longer names the very day that was skipped.
  let after = start
  for (const day of changes.skipped) after = Math.max(after, day)
  return { start, after, lastDone, ...changes }
}

/** What was skipped and moved, the last word on each visit counting. */
function openChanges(records: readonly VisitRecord[]): Pick<PlanStanding, 'skipped' | 'moved'> {
  const skipped = new Set<number>()
  const moved = new Map<number, { to: number; why: string | null }>()
  for (const record of records) {
    if (record.what === 'done') continue
    const day = dayNumber(record.dueOn)
    skipped.delete(day)
    moved.delete(day)
    if (record.what === 'skipped') skipped.add(day)
    else moved.set(day, { to: planDay(record.to, 'to'), why: record.why ?? null })
  }
  return { skipped, moved }
}
