import { objectiveOf } from '../measure.ts'
import { openTime } from '../openTime.ts'
import type { OfferKind } from '../types.ts'
import { placeAmong, withTaken } from './among.ts'
import { findCircle, transfersOf } from './exchange.ts'
import type { FloorJob, FloorObjective, FloorPlan, FloorProblem } from './types.ts'

/** Which cars are promised first, and by which offer. */
const orders: readonly { readonly key: (job: FloorJob) => number; readonly offer: OfferKind }[] = [
  { key: job => job.due, offer: 'soonest' },
  { key: job => job.due / job.weight, offer: 'soonest' },
  { key: job => job.release, offer: 'soonest' },
  { key: job => -job.weight, offer: 'soonest' },
  { key: job => job.due, offer: 'leastBlocked' },
]

/** Plans by promising one car after the other among those promised before, in some orders; the best. Yields a car each. */
export function* serialInsertion(floor: FloorProblem): Generator<void, FloorPlan | undefined> {
  let best: { readonly plan: FloorPlan; readonly cost: FloorObjective } | undefined
  for (const { key, offer } of orders) {
    const plan = yield* insertAll(
      floor,
      [...floor.jobs].sort((a, b) => key(a) - key(b)),
      offer,
    )
    // The promise knows the others as fixed, so it lets cars change places.
    if (!plan || findCircle(transfersOf(plan))) continue
    const cost = costOf(floor, plan)
    if (!best || isBetter(cost, best.cost)) best = { plan, cost }
  }
  return best?.plan
}

function* insertAll(
  floor: FloorProblem,
  jobs: readonly FloorJob[],
  kind: OfferKind,
): Generator<void, FloorPlan | undefined> {
  const plan: Record<string, FloorPlan[string]> = {}
  let taken = floor
  for (const job of jobs) {
    yield
    const offer = placeAmong(taken, job, kind)
    if (!offer.feasible) return undefined
    plan[job.id] = offer.plan
    taken = withTaken(taken, job, offer.plan)
  }
  return plan
}

/** What a plan of the whole floor costs. */
export function costOf(floor: FloorProblem, plan: FloorPlan): FloorObjective {
  const hours = openTime(floor.open)
  const cost = { weightedTardiness: 0, blockedOpen: 0, moves: 0 }
  for (const job of floor.jobs) {
    const { handover, blockedOpen, moves } = objectiveOf(hours, job.steps, plan[job.id]!)
    cost.weightedTardiness += job.weight * Math.max(0, handover - job.due)
    cost.blockedOpen += blockedOpen
    cost.moves += moves
  }
  return cost
}

/** Whether one floor is better than another, the first difference deciding. */
export function isBetter(a: FloorObjective, b: FloorObjective): boolean {
  return (a.weightedTardiness - b.weightedTardiness || a.blockedOpen - b.blockedOpen || a.moves - b.moves) < 0
}
