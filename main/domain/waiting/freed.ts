/** What of the bays a job had and has no more: the place that came free. */
import { difference } from '../calendar/index.ts'
import type { BaySpan } from './fit.ts'

/** A step where and when it was to be. */
export interface StepPlaced {
  readonly position: number
  readonly bayId: string
  readonly startAt: number
  /** Rolled over inside it; null: it was not. */
  readonly movedToBayId: string | null
  readonly movedAt: number | null
}

/** The unbroken times the car was to have one bay each. */
export function staysThrough(steps: readonly StepPlaced[], leavesAt: number): BaySpan[] {
  const entries: { bay: string; from: number }[] = []
  const enter = (bay: string, from: number) => {
    if (entries.at(-1)?.bay !== bay) entries.push({ bay, from })
  }
  for (const { bayId, startAt, movedToBayId, movedAt } of [...steps].sort(
    (a, b) => a.position - b.position,
  )) {
    enter(bayId, startAt)
    if (movedToBayId !== null && movedAt !== null) enter(movedToBayId, movedAt)
  }
  return entries.map(({ bay, from }, i) => ({ bay, from, to: entries[i + 1]?.from ?? leavesAt }))
}

/** What was held `before` and is not held `now`, from the minute `fromAt` on. */
export function freedOf(before: readonly BaySpan[], now: readonly BaySpan[], fromAt: number): BaySpan[] {
  return before
    .map(({ bay, from, to }) => ({ bay, from: Math.max(from, fromAt), to }))
    .filter(({ from, to }) => from < to)
    .flatMap(({ bay, ...span }) => {
      const kept = now.filter(stay => stay.bay === bay).sort((a, b) => a.from - b.from)
      return difference([span], kept).map(({ from, to }) => ({ bay, from, to }))
    })
}
