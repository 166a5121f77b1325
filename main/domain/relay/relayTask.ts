/** The floor as the day plan's problem: what may be laid anew, what stays, and how it stands now. */
import { gridUp } from '../calendar/index.ts'
import {
  type Booked,
  clockedSteps,
  type FloorJob,
  leavingOf,
  planOf,
  problemOf,
  stepOf,
} from '../floor/index.ts'
import type { FloorPlan, FloorProblem, Lent, Step } from '../schedule/index.ts'

/** All JSON-plain: it goes to a thread of its own. */
export interface RelayTask {
  readonly floor: FloorProblem
  /** How the cars to be laid stand now; a car that has no place yet is not in it. */
  readonly present: FloorPlan
}

/** What goes with the cars to be laid, by the car, and when some of it goes with others. */
export interface Going {
  readonly things: ReadonlyMap<string, readonly string[]>
  readonly lent: readonly Lent[]
}

/** A car that is not booked yet and wants a place among the others. */
export interface Rush {
  readonly id: string
  readonly steps: readonly Step[]
  /** It may come from then on, and is wanted home by then. */
  readonly releaseAt: number
  readonly dueAt: number
}

/** How long after the last promise or handover the floor may still be laid, in minutes. */
const spareMin = 7 * 1440

/**
 * Whether a car may be laid anew: booked, coming before `untilAt`, nothing of it begun, not pinned. Places held for a
 * caller stay, and so does a car that is here: its bay is taken and its keys hang at the door.
 */
export function mayRelay(
  job: Pick<FloorJob, 'status' | 'arrivedAt' | 'steps'> & { readonly pinned: boolean },
  untilAt: number,
): boolean {
  return (
    job.status === 'booked' &&
    job.arrivedAt === null &&
    !job.pinned &&
    job.steps.every(step => step.actualStartAt === null) &&
    job.steps[0] !== undefined &&
    job.steps[0].startAt < untilAt
  )
}

interface RelayOptions {
  readonly rush?: Rush | undefined
  readonly sooner?: boolean
  /** Left out: nothing goes with any of them. */
  readonly going?: Going
}

/**
 * The task of laying the cars `free` of the floor anew. No car is asked to come before now, or sooner than agreed but
 * where `sooner` says so. A minute late counts the same for every car.
 */
export function relayTask(
  floor: Booked,
  free: ReadonlySet<string>,
  { rush, sooner = false, going }: RelayOptions = {},
): RelayTask {
  const laid = floor.jobs.filter(job => free.has(job.id))
  const now = gridUp(floor, floor.nowAt)
  const jobs = [
    ...laid.map(job => ({
      id: job.id,
      release: sooner ? now : Math.max(now, job.steps[0]!.startAt),
      due: job.promisedAt,
      weight: 1,
      steps: clockedSteps(job.steps, leavingOf(job)).map(stepOf),
      things: going?.things.get(job.id) ?? [],
    })),
    ...(rush
      ? [
          {
            id: rush.id,
            release: Math.max(now, rush.releaseAt),
            due: rush.dueAt,
            weight: 1,
            steps: rush.steps,
          },
        ]
      : []),
  ]
  const ends = [
    ...laid.flatMap(({ handoverAt, promisedAt }) => [handoverAt, promisedAt]),
    ...(rush ? [rush.dueAt, rush.releaseAt] : []),
  ]
  const kept = { ...floor, jobs: floor.jobs.filter(job => !free.has(job.id)) }
  const steps = jobs.flatMap(job => job.steps)
  const { newJob: _, ...problem } = problemOf(kept, {
    job: { id: '', release: now, asked: now, steps },
    booked: floor.jobs,
  })
  const horizon = Math.min(problem.horizon, Math.max(now, ...ends) + spareMin)
  return {
    floor: {
      ...problem,
      horizon,
      open: problem.open.filter(span => span.from < horizon),
      jobs,
      lent: going?.lent ?? [],
    },
    present: Object.fromEntries(laid.map(job => [job.id, planOf(job)])),
  }
}
