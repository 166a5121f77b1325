import { bestFinish, blockedOf, earliestDropOffFirst, leastBlockedFirst, soonestFirst } from './handovers.ts'
import { offerOf } from './offer.ts'
import { type Prepared, prepare } from './prepare.ts'
import { search } from './search.ts'
import type { NoOffer, Offer, OfferKind, Offers, Problem } from './types.ts'

/** The first stretch of time searched, in minutes; doubled until the answer is certain. */
const FIRST_WINDOW = 7 * 1440

/**
 * The three offers for a new job with everything booked kept fixed, each exact on the grid: `soonest` (handover,
 * blocked, moves, latest drop-off), `leastBlocked` (blocked, handover, moves, latest drop-off) and `askedDay`
 * (earliest drop-off at or after `asked`, handover, blocked, moves). Minutes throughout. The problem must be sound
 * (`readCase` refuses one that is not). Where nothing fits the horizon, `explain` says why.
 * `firstWindow` (minutes, at least 1) only steers the search: it never changes the answer.
 */
export function promise(problem: Problem, firstWindow = FIRST_WINDOW): Offers {
  const prepared = prepare(problem)
  return { ...latestOffers(prepared, firstWindow), askedDay: askedDay(prepared, firstWindow) }
}

/** One of the three offers as `promise` gives it, without the searches that only the others need. */
export function promiseOf(problem: Problem, kind: OfferKind): Offer | NoOffer {
  const prepared = prepare(problem)
  switch (kind) {
    case 'soonest':
      return soonest(prepared, FIRST_WINDOW)
    case 'leastBlocked':
      return latestOffers(prepared, FIRST_WINDOW).leastBlocked
    case 'askedDay':
      return askedDay(prepared, FIRST_WINDOW)
  }
}

function soonest(prepared: Prepared, firstWindow: number): Offer | NoOffer {
  const { newJob, horizon } = prepared.problem
  for (const hi of windows(newJob.release, horizon, firstWindow)) {
    const reached = search(prepared, { lo: newJob.release, hi, dropOff: 'latest' })
    const finish = bestFinish(reached, soonestFirst)
    if (finish) return offerOf('soonest', reached, finish)
  }
  return none('soonest')
}

/** Both offers of the latest drop-off come out of one search. */
function latestOffers(prepared: Prepared, firstWindow: number): Pick<Offers, 'soonest' | 'leastBlocked'> {
  const { release } = prepared.problem.newJob
  const { horizon } = prepared.problem
  let soonest: Offer | undefined
  let bound = 0
  for (const hi of windows(release, horizon, firstWindow)) {
    const reached = search(prepared, { lo: release, hi, dropOff: 'latest' })
    const first = bestFinish(reached, soonestFirst)
    if (!first) continue
    if (!soonest) {
      soonest = offerOf('soonest', reached, first)
      if (soonest.blockedOpen > 0 && hi < horizon) bound = blockedBound(prepared)
    }
    const least = bestFinish(reached, leastBlockedFirst(reached))!
    // A later window can hold a plan that blocks less only while the bound is not reached.
    if (hi >= horizon || blockedOf(reached, least) <= bound)
      return { soonest, leastBlocked: offerOf('leastBlocked', reached, least) }
  }
  return { soonest: none('soonest'), leastBlocked: none('leastBlocked') }
}

/**
 * The earliest drop-off at or after the asked minute. A window's candidate may be beaten only by an earlier drop-off
 * whose car goes home after the window, which one search of those drop-offs alone settles.
 */
function askedDay(prepared: Prepared, firstWindow: number): Offer | NoOffer {
  const { problem } = prepared
  const lo = Math.max(problem.newJob.release, problem.newJob.asked)
  for (const hi of windows(lo, problem.horizon, firstWindow)) {
    const reached = search(prepared, { lo, hi, dropOff: 'earliest' })
    const finish = bestFinish(reached, earliestDropOffFirst(reached))
    if (!finish) continue
    const offer = offerOf('askedDay', reached, finish)
    if (hi >= problem.horizon) return offer
    return earlierOffer(prepared, lo, offer.dropOff - 1) ?? offer
  }
  return none('askedDay')
}

function earlierOffer(prepared: Prepared, lo: number, dropTo: number): Offer | undefined {
  const reached = search(prepared, { lo, hi: prepared.problem.horizon, dropOff: 'earliest', dropTo })
  const finish = bestFinish(reached, earliestDropOffFirst(reached))
  return finish && offerOf('askedDay', reached, finish)
}

function none(kind: OfferKind): NoOffer {
  return { kind, feasible: false }
}

/** Ends of ever longer stretches from `lo`, the last one the horizon. */
function* windows(lo: number, horizon: number, first: number): Generator<number> {
  for (let length = first; lo + length < horizon; length *= 2) yield lo + length
  yield horizon
}

/** Bounds of some opening hours, by the chain of steps. */
const bounds = new WeakMap<Problem['open'], Map<string, Bound>>()

/** A chain's bound, and the time it was looked for in. */
interface Bound {
  readonly release: number
  readonly horizon: number
  readonly blocked: number
}

/** Chains whose bounds are kept; a caller is asked about one or two. */
const mostChains = 16

/**
 * Blocked minutes no plan can go below: what the openings, waits and holds alone ask. Kept with the openings: the same
 * chain is searched again for a later day, for another kind of offer, and while the caller thinks.
 */
function blockedBound({ problem }: Prepared): number {
  const { open, horizon, newJob, grid, gridFrom } = problem
  const known = bounds.get(open) ?? new Map<string, Bound>()
  bounds.set(open, known)
  const chain = JSON.stringify([newJob.steps, grid, gridFrom])
  const before = known.get(chain)
  // A later release and a nearer horizon leave fewer plans, so what bounds more of them bounds these.
  if (before && before.release <= newJob.release && before.horizon >= horizon) return before.blocked
  const blocked = emptyShopBlocks(problem)
  if (known.size >= mostChains) known.clear()
  known.set(chain, { release: newJob.release, horizon, blocked })
  return blocked
}

/** The fewest blocked minutes in a shop with one bay that can do everything, empty, and nobody else's work to wait for. */
function emptyShopBlocks(problem: Problem): number {
  const steps = problem.newJob.steps.map(step => {
    const free = { ...step, needs: null, bays: undefined, preferBays: undefined }
    return free.kind === 'work' ? { ...free, skill: null } : { ...free, moveAfter: null }
  })
  const empty = prepare({
    ...problem,
    bays: [{ id: 'any', can: [], closed: [] }],
    crew: [],
    fixed: [],
    newJob: { ...problem.newJob, steps, preferBays: undefined },
  })
  const reached = search(empty, { lo: problem.newJob.release, hi: problem.horizon, dropOff: 'latest' })
  const finish = bestFinish(reached, leastBlockedFirst(reached))
  return finish ? blockedOf(reached, finish) : 0
}
