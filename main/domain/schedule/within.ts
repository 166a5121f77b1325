/** Offers for a car that borrows something: from its drop-off to its handover it lies within one time in which that is free. */
import type { Span } from '../calendar/spans.ts'
import { gridCeil, minuteAt } from './prepare.ts'
import { promise, promiseOf } from './promise.ts'
import type { NoOffer, Offer, OfferKind, Problem } from './types.ts'

/** The times the car may be here in, one of them; null: any. They may overlap: two loan cars are free at different times. */
export type Windows = readonly Span[] | null

/** An offer with the problem it is the best answer to: that of its window. */
export interface Within {
  readonly offer: Offer | NoOffer
  readonly asked: Problem
}

/** The three offers as `promise` gives them, each the best over all windows. */
export function promiseWithin(problem: Problem, windows: Windows): Readonly<Record<OfferKind, Within>> {
  if (windows === null) {
    const { soonest, leastBlocked, askedDay } = promise(problem)
    const of = (offer: Offer | NoOffer): Within => ({ offer, asked: problem })
    return { soonest: of(soonest), leastBlocked: of(leastBlocked), askedDay: of(askedDay) }
  }
  const best = (kind: OfferKind) => promiseOfWithin(problem, kind, windows)
  return { soonest: best('soonest'), leastBlocked: best('leastBlocked'), askedDay: best('askedDay') }
}

/** One of them alone. Windows are taken in order, and those that can hold nothing better any more are left. */
export function promiseOfWithin(problem: Problem, kind: OfferKind, windows: Windows): Within {
  if (windows === null) return { offer: promiseOf(problem, kind), asked: problem }
  let best: Within = { offer: { kind, feasible: false }, asked: problem }
  for (const window of [...windows].sort((a, b) => a.from - b.from)) {
    if (best.offer.feasible && window.from > latestUse(kind, best.offer)) break
    const asked = inWindow(problem, window)
    if (asked.newJob.release >= asked.horizon) continue
    const offer = promiseOf(asked, kind)
    if (offer.feasible && (!best.offer.feasible || isBetter(kind, offer, best.offer))) best = { offer, asked }
  }
  return best
}

function inWindow(problem: Problem, { from, to }: Span): Problem {
  const { newJob } = problem
  const begins = Number.isFinite(from) ? minuteAt(problem, gridCeil(problem, from)) : newJob.release
  const release = Math.max(newJob.release, begins)
  return {
    ...problem,
    horizon: Math.min(problem.horizon, to),
    newJob: { ...newJob, release, asked: Math.max(release, newJob.asked) },
  }
}

/** A window that begins after this holds nothing better of this kind. */
function latestUse(kind: OfferKind, { handover, dropOff, blockedOpen }: Offer): number {
  if (kind === 'askedDay') return dropOff
  return kind === 'soonest' || blockedOpen === 0 ? handover : Number.POSITIVE_INFINITY
}

/** The orders `promise` promises by, least first. */
function rankOf(kind: OfferKind, { handover, blockedOpen, moves, dropOff }: Offer): readonly number[] {
  if (kind === 'soonest') return [handover, blockedOpen, moves, -dropOff]
  if (kind === 'leastBlocked') return [blockedOpen, handover, moves, -dropOff]
  return [dropOff, handover, blockedOpen, moves]
}

function isBetter(kind: OfferKind, one: Offer, other: Offer): boolean {
  const [a, b] = [rankOf(kind, one), rankOf(kind, other)]
  const at = a.findIndex((value, i) => value !== b[i])
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0)
}
