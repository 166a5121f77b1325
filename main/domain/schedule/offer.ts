import { extract } from './extract.ts'
import type { Finish } from './handovers.ts'
import { closedCureOf, objectiveOf, staysOf } from './measure.ts'
import type { Reached } from './search.ts'
import { stepAt } from './steps.ts'
import { chooseHelp, chooseTeam } from './team.ts'
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
    const step = stepAt(problem, i)
    const crew = chooseTeam(reached.prepared, step, placed, already)
    const help = crew && chooseHelp(reached.prepared, step, placed, crew)
    if (!crew || !help) throw new Error(`Step ${i + 1} was placed at ${placed.start} without a free crew`)
    for (const id of crew) already.add(id)
    return { ...placed, crew, ...(help.length > 0 && { help }) }
  })
  return { steps, handover: finish.handover }
}
