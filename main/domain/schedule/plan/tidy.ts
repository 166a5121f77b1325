import { fitsAmong } from './among.ts'
import { isChanged } from './changes.ts'
import { findCircle, transfersOf } from './exchange.ts'
import { costOf, isBetter } from './seed.ts'
import type { FloorPlan, FloorProblem } from './types.ts'

/** Whether a plan obeys every rule, by the checks any plan must pass before it is saved. */
export function isSound(floor: FloorProblem, plan: FloorPlan): boolean {
  return (
    floor.jobs.every(job => plan[job.id] && fitsAmong(floor, plan, job, plan[job.id]!)) &&
    !findCircle(transfersOf(plan))
  )
}

/** The plan with every car put back where it stands at present that loses nothing by it, one after the other. */
export function tidied(floor: FloorProblem, plan: FloorPlan, present: FloorPlan): FloorPlan {
  let now = plan
  for (let again = true; again; ) {
    again = false
    for (const job of floor.jobs) {
      const own = present[job.id]
      if (!own || !isChanged(own, now[job.id]!)) continue
      const back = { ...now, [job.id]: own }
      if (isBetter(costOf(floor, now), costOf(floor, back))) continue
      if (!fitsAmong(floor, now, job, own) || findCircle(transfersOf(back))) continue
      now = back
      again = true
    }
  }
  return now
}
