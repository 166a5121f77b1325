import type { FloorPlan, FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import type { Plan, Problem } from '../../../../main/domain/schedule/types.ts'
import { count, verify } from '../verify.ts'

/**
 * A judge of whole floors, apart from the solver: every car is judged minute by minute by the judge of promises, with
 * all others as what is booked; then cars that enter each other's bays at one minute are followed round. Returns the
 * objections.
 */
export function verifyFloor(floor: FloorProblem, plan: FloorPlan): string[] {
  const objections: string[] = []
  const ids = floor.jobs.map(job => job.id)
  if (Object.keys(plan).sort().join() !== [...ids].sort().join()) return ['not the jobs asked for']
  for (const job of floor.jobs) {
    const others = ids.filter(id => id !== job.id).map(id => plan[id]!)
    const problem: Problem = {
      ...floor,
      fixed: [...floor.fixed, ...others.flatMap(standing)],
      crew: floor.crew.map(person => ({
        ...person,
        away: [...person.away, ...others.flatMap(other => workOf(other, person.id))],
      })),
      newJob: { ...job, asked: job.release },
    }
    objections.push(...verify(problem, plan[job.id]!).map(text => `${job.id}: ${text}`))
  }
  return [...objections, ...exchanges(plan)]
}

function standing(plan: Plan) {
  return plan.steps
    .map((step, i) => ({ bay: step.bay, from: step.start, to: plan.steps[i + 1]?.start ?? plan.handover }))
    .filter(stay => stay.from < stay.to)
}

function workOf(plan: Plan, id: string) {
  return plan.steps.filter(step => step.crew.includes(id)).map(step => ({ from: step.start, to: step.end }))
}

/** Circles of cars that could only change places: take away whoever can move, again and again, and see who is left. */
function exchanges(plan: FloorPlan): string[] {
  const moves = Object.entries(plan).flatMap(([job, { steps }]) =>
    steps.flatMap((step, i) => {
      const from = steps[i - 1]?.bay
      return from !== undefined && from !== step.bay ? [{ job, at: step.start, from, to: step.bay }] : []
    }),
  )
  let left = moves
  for (;;) {
    const stuck = left.filter(move => left.some(other => other.at === move.at && other.from === move.to))
    if (stuck.length === left.length) break
    left = stuck
  }
  return left.map(move => `${move.job} changes places at ${move.at}`)
}

/** What the plan costs, counted minute by minute. */
export function countFloor(floor: FloorProblem, plan: FloorPlan) {
  const total = { weightedTardiness: 0, blockedOpen: 0, moves: 0 }
  for (const job of floor.jobs) {
    const problem: Problem = { ...floor, newJob: { ...job, asked: job.release } }
    const { handover, blockedOpen, moves } = count(problem, plan[job.id]!)
    total.weightedTardiness += job.weight * Math.max(0, handover - job.due)
    total.blockedOpen += blockedOpen
    total.moves += moves
  }
  return total
}
