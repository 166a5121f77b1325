import { extract } from './extract.ts'
import type { Finish } from './handovers.ts'
import { closedCureOf, objectiveOf, staysOf } from './measure.ts'
import type { Reached } from './search.ts'
import { chooseTeam } from './team.ts'
import type { Offer, OfferKind, Plan, PlannedStep } from './types.ts'

/** A found way as an offer: its plan with people named, its stays and what it costs. */
export function offerOf(kind: OfferKind, reached: Reached, finish: Finish): Offer {
  const plan = planOf(reached, finish)
  const { hours, problem } = reached.prepared
  return {
    kind,
    feasible: true,
    ...objectiveOf(hours, problem.newJob.steps, plan),
    plan,
    stays: staysOf(plan),
    closedCure: closedCureOf(hours, problem.newJob.steps, plan),
  }
}

export function planOf(reached: Reached, finish: Finish): Plan {
  const { problem } = reached.prepared
  const already = new Set<string>()
  const steps = extract(reached, finish).map((placed, i): PlannedStep => {
    const crew = chooseTeam(reached.prepared, problem.newJob.steps[i]!, placed, already)
    if (!crew) throw new Error(`Step ${i + 1} was placed at ${placed.start} without a free crew`)
    for (const id of crew) already.add(id)
    return {
      bay: problem.bays[placed.bay]!.id,
      start: placed.start,
      end: placed.end,
      crew,
      ...(placed.moved && { moved: { at: placed.moved.at, bay: problem.bays[placed.moved.bay]!.id } }),
    }
  })
  return { steps, handover: finish.handover }
}
