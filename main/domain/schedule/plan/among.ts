import { staysOf } from '../measure.ts'
import { openTime, partOfWork } from '../openTime.ts'
import { helpOf } from '../steps.ts'
import type { Plan, Problem } from '../types.ts'
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
  return { ...floor, crew, fixed: [...floor.fixed, ...stays] }
}

/** One car as the promise reads it, all others standing as the plan has them. */
export function amongOthers(floor: FloorProblem, plan: FloorPlan, job: FloorJob): Problem {
  const taken = floor.jobs.reduce((now, other) => {
    const own = plan[other.id]
    return other.id === job.id || !own ? now : withTaken(now, other, own)
  }, floor)
  return asProblem(taken, job)
}
