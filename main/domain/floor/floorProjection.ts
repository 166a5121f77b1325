/** What really happened carried forward: where a job's steps, moves and handover now fall. */
import { difference, firstOpenAt, gridUp } from '../calendar/index.ts'
import { type Problem, type Projection, project } from '../schedule/index.ts'
import { clockedSteps } from './clockedSteps.ts'
import type { Booked } from './floor.ts'
import { type FloorJob, leavingOf, planOf, stepOf } from './floorJobs.ts'
import { problemOf } from './floorProblem.ts'

export interface ProjectedJob {
  readonly job: FloorJob
  /** Waits broken and bays run into, as the scheduler found them. */
  readonly broken: Projection['broken']
}

/**
 * People are taken to be there when they are not away: that two jobs now want the same ones is a conflict to be seen
 * and settled, not a reason to push one of them behind the other.
 */
function withoutOthers(problem: Problem, floor: Booked): Problem {
  const present = new Map(floor.crew.map(person => [person.id, person.present]))
  return {
    ...problem,
    crew: problem.crew.map(person => ({
      ...person,
      away: difference(floor.open, present.get(person.id) ?? []),
    })),
  }
}

/**
 * A job with its steps' times and its handover as they follow from the plan, the actual times and the present. Where
 * the horizon does not hold what is left, the stored times stay and `broken` says so.
 */
export function projectJob(floor: Booked, job: FloorJob): ProjectedJob {
  let projected = projectOnce(floor, job)
  // A hold that follows other work ends by its coat's clock, so its length hangs on when that work lets it begin.
  for (let turn = 0; turn < job.steps.length && job.steps.some(step => step.laid); turn++) {
    const again = projectOnce(floor, job, projected.job.steps)
    const settled = again.job.steps.every((step, i) => step.endAt === projected.job.steps[i]?.endAt)
    projected = again
    if (settled) break
  }
  return projected
}

/** @param timed the steps at the times they are taken to begin and end at, as far as a clock needs to know. */
function projectOnce(floor: Booked, job: FloorJob, timed = job.steps): ProjectedJob {
  const clocked = clockedSteps(timed, leavingOf(job))
  const problem = problemOf(floor, {
    exceptJobId: job.id,
    job: { id: job.id, release: 0, asked: 0, steps: clocked.map(stepOf) },
  })
  const plan = planOf({
    steps: job.steps.map(step => ({ ...step, startAt: step.plannedAt, endAt: step.plannedEndAt })),
    handoverAt: job.plannedHandoverAt,
  })
  const actuals = job.steps.map(step => ({ start: step.actualStartAt, end: step.actualEndAt }))
  const happened = { actuals, now: floor.nowAt, promised: job.promisedAt }
  const { steps, handover, broken } = project(withoutOthers(problem, floor), plan, happened)
  if (handover === null) return { job, broken }
  const soonest = job.status === 'inShop' ? firstOpenAt(floor.open, gridUp(floor, floor.nowAt), true) : null
  return {
    job: {
      ...job,
      handoverAt: handover,
      leavesAt: Math.max(handover, soonest ?? handover),
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

/** The floor with every car that is in the shop projected to the present; the first booked push the later ones. */
export function projectFloor<F extends Booked>(floor: F): F {
  let jobs = floor.jobs
  for (const job of floor.jobs)
    if (job.status === 'inShop') {
      const { job: now } = projectJob({ ...floor, jobs }, job)
      jobs = jobs.map(other => (other.id === now.id ? now : other))
    }
  return { ...floor, jobs }
}
