import type { FloorJob, FloorProblem } from '../../../../main/domain/schedule/plan/types.ts'
import type { Plan, PlannedStep, Problem, Step } from '../../../../main/domain/schedule/types.ts'
import { count, verify } from '../verify.ts'
import { verifyFloor } from './verifyFloor.ts'

interface Way {
  readonly plan: Plan
  readonly costs: readonly number[]
}

/**
 * The least costs of a floor of one or two cars, by trying every plan: each start on the grid, bay, team and handover,
 * judged by the judge of promises, in every pair. Undefined where there is none. `more`: what a car's plan costs after
 * all else. For tiny floors only.
 */
export function bestByTrying(
  floor: FloorProblem,
  more?: (job: FloorJob, plan: Plan) => number,
): number[] | undefined {
  const [first = [], second] = floor.jobs.map(job =>
    waysOf(floor, job).map(({ plan, costs }) => ({
      plan,
      costs: more ? [...costs, more(job, plan)] : costs,
    })),
  )
  let best: number[] | undefined
  for (const a of first)
    for (const b of second ?? [undefined]) {
      const costs = a.costs.map((cost, i) => cost + (b?.costs[i] ?? 0))
      if (best && !isLess(costs, best)) continue
      const plan = Object.fromEntries(floor.jobs.map((job, j) => [job.id, [a, b][j]!.plan]))
      if (verifyFloor(floor, plan).length === 0) best = costs
    }
  return best
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((cost, at) => cost !== b[at])
  return i >= 0 && a[i]! < b[i]!
}

/** Every plan of one car alone on the floor, the cheap ones first. */
function waysOf(floor: FloorProblem, job: FloorJob): Way[] {
  const problem: Problem = { ...floor, newJob: { ...job, asked: job.release } }
  const ways: Way[] = []
  const points: number[] = []
  for (let t = 0; t <= floor.horizon; t += floor.grid) points.push(t)
  const extend = (steps: readonly PlannedStep[]) => {
    const step = job.steps[steps.length]
    if (step) {
      for (const start of points.filter(t => t >= (steps.at(-1)?.end ?? job.release)))
        for (const bay of floor.bays)
          for (const crew of teams(floor, step))
            extend([...steps, { bay: bay.id, start, end: endOf(floor, step, start), crew }])
      return
    }
    for (const handover of points.filter(t => t >= steps.at(-1)!.end)) {
      const plan = { steps, handover }
      if (verify(problem, plan).length > 0) continue
      const { blockedOpen, moves } = count(problem, plan)
      ways.push({ plan, costs: [job.weight * Math.max(0, handover - job.due), blockedOpen, moves] })
      // A car that may go home does: staying only costs, and keeps the bay.
      return
    }
  }
  extend([])
  return ways.sort((a, b) => (isLess(a.costs, b.costs) ? -1 : 1))
}

function teams(floor: FloorProblem, step: Step): string[][] {
  if (step.kind === 'hold' || step.skill === null) return [[]]
  const able = floor.crew.filter(person => person.skills.includes(step.skill!)).map(person => person.id)
  return step.crew === 1 ? able.map(id => [id]) : able.length >= 2 ? [able.slice(0, 2)] : []
}

function endOf(floor: FloorProblem, step: Step, start: number): number {
  if (step.kind === 'hold' || !step.split) return start + step.minutes
  let left = step.minutes
  let t = start
  for (; left > 0 && t < floor.horizon; t++) if (floor.open.some(o => o.from <= t && t < o.to)) left--
  return t
}
