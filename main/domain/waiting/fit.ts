/** Where a caller on the waiting list would fit: the promise engine asked for the days that suit them. */
import { intersection, type Span } from '../calendar/index.ts'
import { type NoOffer, type Offer, type Problem, promiseOf } from '../schedule/index.ts'

/** When it suits somebody, as points in time. */
export interface WishedTimes {
  /** The car comes in one of these stretches, in order; each is a day, or all days where any will do. */
  readonly comes: readonly Span[]
  /** It is home before then. */
  readonly homeBefore: number
}

/**
 * The soonest handover with a drop-off that suits: exact, because each stretch is asked of the promise engine by itself and
 * later ones are left only where the car would be dropped off after the best found is home already.
 */
export function fitOf(problem: Problem, { comes, homeBefore }: WishedTimes): Offer | NoOffer {
  const [first, ...rest] = problem.newJob.steps
  let best: Offer | NoOffer = { kind: 'soonest', feasible: false }
  if (!first) return best
  const horizon = Math.min(problem.horizon, homeBefore)
  for (const { from, to } of comes) {
    if (best.feasible && from > best.handover) break
    const release = Math.max(problem.newJob.release, from)
    if (release >= Math.min(to, horizon)) continue
    const steps = [{ ...first, startFrom: release, startTo: Math.min(to, horizon) - 1 }, ...rest]
    const offer = promiseOf(
      { ...problem, horizon, newJob: { ...problem.newJob, release, asked: release, steps } },
      'soonest',
    )
    if (offer.feasible && (!best.feasible || offer.handover < best.handover)) best = offer
  }
  return best
}

/** A stretch of one bay. */
export interface BaySpan extends Span {
  readonly bay: string
}

/** How many of the opening minutes of the freed stretches these stays use, and of how many. */
export function gapUse(
  gaps: readonly BaySpan[],
  stays: readonly BaySpan[],
  open: readonly Span[],
): { usedMin: number; gapMin: number } {
  const minutes = (spans: readonly Span[]) => spans.reduce((sum, { from, to }) => sum + to - from, 0)
  const openIn = (span: Span) => intersection(open, [span])
  const gapMin = gaps.reduce((sum, gap) => sum + minutes(openIn(gap)), 0)
  const usedMin = gaps.reduce(
    (sum, gap) =>
      sum +
      stays
        .filter(stay => stay.bay === gap.bay)
        .reduce((part, stay) => part + minutes(intersection(openIn(gap), [stay])), 0),
    0,
  )
  return { usedMin, gapMin }
}
