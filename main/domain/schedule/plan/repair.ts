import type { OfferKind } from '../types.ts'
import { fitsAmong, placeAmong, withTaken } from './among.ts'
import { findCircle, transfersOf } from './exchange.ts'
import { costOf, isBetter } from './seed.ts'
import type { FloorPlan, FloorProblem } from './types.ts'

const offers: readonly OfferKind[] = ['soonest', 'leastBlocked']

/**
 * The present plan with new places for those cars alone that cannot stay or have none: near what there is, so few
 * changes are left to prove. Undefined where they find no place among the others. Yields a car each.
 */
export function* repaired(floor: FloorProblem, present: FloorPlan): Generator<void, FloorPlan | undefined> {
  const kept = yield* staying(floor, present)
  const left = floor.jobs.filter(job => !kept[job.id]).sort((a, b) => a.due - b.due)
  const standing = floor.jobs.reduce((now, job) => {
    const own = kept[job.id]
    return own ? withTaken(now, job, own) : now
  }, floor)
  let best: FloorPlan | undefined
  for (const offer of offers) {
    const plan: Record<string, FloorPlan[string]> = { ...kept }
    let taken = standing
    for (const job of left) {
      yield
      const found = placeAmong(taken, job, offer)
      if (!found.feasible) return best
      plan[job.id] = found.plan
      taken = withTaken(taken, job, found.plan)
    }
    // The promise knows the others as fixed, so it lets cars change places.
    if (findCircle(transfersOf(plan))) continue
    if (!best || isBetter(costOf(floor, plan), costOf(floor, best))) best = plan
  }
  return best
}

/** The cars that stay where they are: those nothing stands against, then of the others each that fits beside them. */
function* staying(floor: FloorProblem, present: FloorPlan): Generator<void, FloorPlan> {
  const booked = floor.jobs.filter(job => present[job.id])
  const stands = Object.fromEntries(booked.map(job => [job.id, present[job.id]!]))
  const kept: Record<string, FloorPlan[string]> = {}
  const fits = (job: FloorProblem['jobs'][number], others: FloorPlan) =>
    fitsAmong(floor, others, job, present[job.id]!)
  const broken: typeof booked = []
  for (const job of booked) {
    yield
    if (fits(job, stands)) kept[job.id] = present[job.id]!
    else broken.push(job)
  }
  for (const job of broken) {
    yield
    const beside = { ...kept, [job.id]: present[job.id]! }
    if (fits(job, kept) && !findCircle(transfersOf(beside))) kept[job.id] = present[job.id]!
  }
  return kept
}
