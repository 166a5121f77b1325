import { checkPlan } from '../checkPlan.ts'
import { staysOf } from '../measure.ts'
import { openTime, partOfWork } from '../openTime.ts'
import { helpOf } from '../steps.ts'
import type { NoOffer, Offer, OfferKind, Plan, Problem } from '../types.ts'
import { promiseOfWithin } from '../within.ts'
import { areFree, lentBy, windowsOf } from './things.ts'
import { asProblem, type FloorJob, type FloorPlan, type FloorProblem } from './types.ts'

/** The floor with one car's plan on it: its bays are taken and its people away, as if it were booked. */
export function withTaken<F extends FloorProblem>(floor: F, job: FloorJob, plan: Plan): F {
  const hours = openTime(floor.open)
  const crew = floor.crew.map(person => {
    const away = plan.steps.flatMap(({ start, end, crew: team, help = [] }, i) => {
      if (team.includes(person.id)) return [{ from: start, to: end }]
      const part = helpOf(job.steps[i]!)
      return part && help.includes(person.id) ? [partOfWork(hours, start, part)] : []
    })
    return away.length > 0 ? { ...person, away: [...person.away, ...away] } : person
  })
  const stays = staysOf(plan).map(stay => ({ ...stay, job: job.id }))
  const lent = [...(floor.lent ?? []), ...lentBy(job, plan)]
  return { ...floor, crew, fixed: [...floor.fixed, ...stays], lent }
}

/** The floor with all cars but one standing as the plan has them. */
function withOthers(floor: FloorProblem, plan: FloorPlan, job: FloorJob): FloorProblem {
  return floor.jobs.reduce((now, other) => {
    const own = plan[other.id]
    return other.id === job.id || !own ? now : withTaken(now, other, own)
  }, floor)
}

/** One car as the promise reads it, all others standing as the plan has them. */
export function amongOthers(floor: FloorProblem, plan: FloorPlan, job: FloorJob): Problem {
  return asProblem(withOthers(floor, plan, job), job)
}

/** Whether a car may stand so while all others stand as the plan has them: every rule, and what goes with it is free. */
export function fitsAmong(floor: FloorProblem, plan: FloorPlan, job: FloorJob, own: Plan): boolean {
  const taken = withOthers(floor, plan, job)
  return areFree(taken, job, own) && checkPlan(asProblem(taken, job), own).length === 0
}

/** The best place for one car among what is taken, by one of the offers. */
export function placeAmong(taken: FloorProblem, job: FloorJob, kind: OfferKind): Offer | NoOffer {
  return promiseOfWithin(asProblem(taken, job), kind, windowsOf(taken, job)).offer
}
