import type { FloorJob, FloorPlan, FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
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
    const others = floor.jobs.filter(other => other !== job)
    const problem: Problem = {
      ...floor,
      fixed: [...floor.fixed, ...others.flatMap(other => standing(plan[other.id]!))],
      crew: floor.crew.map(person => ({
        ...person,
        away: [...person.away, ...others.flatMap(other => workOf(floor, other, plan[other.id]!, person.id))],
      })),
      newJob: { ...job, asked: job.release },
    }
    objections.push(...verify(problem, plan[job.id]!).map(text => `${job.id}: ${text}`))
  }
  return [...objections, ...exchanges(plan), ...lentTwice(floor, plan)]
}

/** Minutes in which one thing goes with two cars. */
function lentTwice(floor: FloorProblem, plan: FloorPlan): string[] {
  const taken = new Set<string>()
  const objections: string[] = []
  const take = (thing: string, from: number, to: number) => {
    for (let t = from; t < to; t++) {
      if (taken.has(`${thing} ${t}`)) return objections.push(`${thing} is lent twice at ${t}`)
      taken.add(`${thing} ${t}`)
    }
  }
  const others = new Set((floor.lent ?? []).map(({ thing }) => thing))
  for (const thing of others)
    for (let t = 0; t < floor.horizon; t++)
      if (floor.lent!.some(lent => lent.thing === thing && lent.from <= t && t < lent.to))
        taken.add(`${thing} ${t}`)
  for (const { id, things = [] } of floor.jobs)
    for (const thing of things) take(thing, plan[id]!.steps[0]!.start, plan[id]!.handover)
  return objections
}

function standing(plan: Plan) {
  return plan.steps
    .map((step, i) => ({ bay: step.bay, from: step.start, to: plan.steps[i + 1]?.start ?? plan.handover }))
    .filter(stay => stay.from < stay.to)
}

/** When somebody works on a car, its help included: a part of a step is counted in its worked minutes. */
function workOf(floor: FloorProblem, job: FloorJob, plan: Plan, id: string) {
  return plan.steps.flatMap(({ start, end, crew, help = [] }, i) => {
    if (crew.includes(id)) return [{ from: start, to: end }]
    const step = job.steps[i]!
    if (!help.includes(id) || step.kind === 'hold' || !step.help) return []
    const worked: number[] = []
    for (let t = start; t < end; t++) if (floor.open.some(o => o.from <= t && t < o.to)) worked.push(t)
    const part = worked.slice(step.help.from, step.help.from + step.help.minutes)
    return part.map(minute => ({ from: minute, to: minute + 1 }))
  })
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
