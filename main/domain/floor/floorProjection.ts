/** What really happened carried forward: where a job's steps, moves and handover now fall. */
import { difference, firstOpenAt, gridUp, spanSet } from '../calendar/index.ts'
import { type Problem, type Projection, project } from '../schedule/index.ts'
import { clockedSteps } from './clockedSteps.ts'
import type { Booked } from './floor.ts'
import { type FloorJob, leavingOf, planOf, stepOf } from './floorJobs.ts'
import { type Claimed, inTurn } from './peopleInTurn.ts'

export interface ProjectedJob {
  readonly job: FloorJob
  /** Waits broken, and the horizon where it does not hold what is left. */
  readonly broken: Projection['broken']
}

const nobodyClaimed: Claimed = new Map()

/**
 * A job with its steps' times and its handover as they follow from the plan, the actual times, the present, and from
 * what the others ask of its people: who is at work on another car, or asked for sooner, comes after that. Where the
 * horizon does not hold what is left, the stored times stay and `broken` says so.
 */
export function projectJob(floor: Booked, job: FloorJob): ProjectedJob {
  // Where the floor has it already, this one counts: of two with one id the later does.
  return carryForward({ ...floor, jobs: [...floor.jobs, job] }, job.id).get(job.id)!
}

/** The floor with every car that is in the shop projected to the present. */
export function projectFloor<F extends Booked>(floor: F): F {
  const carried = carryForward(floor)
  if (carried.size === 0) return floor
  return { ...floor, jobs: floor.jobs.map(job => carried.get(job.id)?.job ?? job) }
}

/** The cars in the shop carried forward together, and the job `also` whether its car is here or not. */
function carryForward(floor: Booked, also?: string): Map<string, ProjectedJob> {
  const base = baseOf(floor)
  const own = floor.jobs.filter(job => job.status === 'inShop' || job.id === also)
  const stored = new Map(own.map(job => [job.id, job]))
  const found = new Map<string, ProjectedJob>()
  const lay = ({ id }: FloorJob, claimed: Claimed) => {
    const projected = projectAlone(floor, base, stored.get(id)!, claimed)
    found.set(id, projected)
    return projected.job
  }
  const carried = new Map(own.map(job => [job.id, lay(job, nobodyClaimed)]))
  if (carried.size > 0) inTurn(floor, carried, lay)
  return found
}

type Base = Omit<Problem, 'newJob'>

/** The shop as a projection needs it: its hours, and who is away when. Nothing here moves a car to another bay. */
function baseOf(floor: Booked): Base {
  return {
    grid: floor.gridMin,
    gridFrom: floor.gridFrom,
    horizon: floor.toAt,
    open: floor.open,
    bays: [],
    crew: floor.crew
      .filter(person => !person.archived)
      .map(({ id, skills, present }) => ({ id, skills, away: difference(floor.open, present) })),
    fixed: [],
  }
}

function projectAlone(floor: Booked, base: Base, job: FloorJob, claimed: Claimed): ProjectedJob {
  const asked = {
    ...base,
    crew: base.crew.map(person => {
      const elsewhere = claimed.get(person.id)
      return elsewhere ? { ...person, away: spanSet([...person.away, ...elsewhere]) } : person
    }),
  }
  let projected = projectOnce(floor, asked, job)
  // A hold that follows other work ends by its coat's clock, so its length hangs on when that work lets it begin.
  for (let turn = 0; turn < job.steps.length && job.steps.some(step => step.laid); turn++) {
    const again = projectOnce(floor, asked, job, projected.job.steps)
    const settled = again.job.steps.every((step, i) => step.endAt === projected.job.steps[i]?.endAt)
    projected = again
    if (settled) break
  }
  return projected
}

/** @param timed the steps at the times they are taken to begin and end at, as far as a clock needs to know. */
function projectOnce(floor: Booked, base: Base, job: FloorJob, timed = job.steps): ProjectedJob {
  const clocked = clockedSteps(timed, leavingOf(job))
  const problem = { ...base, newJob: { id: job.id, release: 0, asked: 0, steps: clocked.map(stepOf) } }
  const plan = planOf({
    steps: job.steps.map(step => ({ ...step, startAt: step.plannedAt, endAt: step.plannedEndAt })),
    handoverAt: job.plannedHandoverAt,
  })
  const actuals = job.steps.map(step => ({ start: step.actualStartAt, end: step.actualEndAt }))
  const happened = { actuals, now: floor.nowAt, promised: job.promisedAt }
  const { steps, handover, broken } = project(problem, plan, happened)
  if (handover === null) return { job: { ...job, endless: true }, broken }
  const { endless: _, ...ends } = job
  const soonest = job.status === 'inShop' ? firstOpenAt(floor.open, gridUp(floor, floor.nowAt), true) : null
  return {
    job: {
      ...ends,
      handoverAt: handover,
      leavesAt: Math.max(handover, soonest ?? handover, job.fetchAt ?? handover),
      steps: job.steps.map((step, i) => {
        const now = steps[i]
        if (!now) return step
        return {
          ...step,
          startAt: now.start,
          endAt: now.end,
          movedToBayId: now.moved?.bay ?? null,
          movedAt: now.moved?.at ?? null,
        }
      }),
    },
    broken,
  }
}
