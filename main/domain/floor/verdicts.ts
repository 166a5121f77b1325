/** How every promise stands: the one place that says so, whoever shows it. */
import { say } from '../language/index.ts'
import { type Conflict, conflictsOn, lackOf, type ToldFloor } from './conflicts.ts'
import type { FloorJob } from './floorJobs.ts'
import { projectJob } from './floorProjection.ts'
import { unfetchedSince } from './unfetched.ts'

export interface Verdict {
  /**
   * `none`: nothing is promised yet. `late`: by the plan and what happened it is ready after its promise. `lacking`: the
   * plan would keep it, but somebody or a bay is missing for that. `unfetched`: it is ready, and nobody has come.
   */
  readonly standing: 'none' | 'kept' | 'late' | 'lacking' | 'unfetched'
  /** The handover as now expected, in epoch minutes. */
  readonly expectedAt: number
  /** Minutes past the promise; 0 where it is kept. */
  readonly lateMin: number
  /** What is missing for it, in a few words; null: nothing. */
  readonly lack: string | null
  /** The same as sentences, each once. */
  readonly lackWords: readonly string[]
  /** Since when it is ready and nobody has come for it; null: it is not so. */
  readonly unfetchedAt: number | null
}

export interface Judged {
  readonly conflicts: readonly Conflict[]
  /** The verdict on a job of the floor, or on one that is over, as it went. */
  of(job: Promised): Verdict
}

type Promised = Pick<FloorJob, 'id' | 'status' | 'promisedAt' | 'handoverAt'>

/** Judges every promise of the floor. */
export function judge(floor: ToldFloor): Judged {
  const conflicts = conflictsOn(floor)
  const lacksOf = Map.groupBy(
    conflicts.filter(each => each.uncovered),
    each => each.jobId,
  )
  const jobs = new Map(floor.jobs.map(job => [job.id, job]))
  const known = new Map<string, Verdict>()
  const of = (job: Promised): Verdict => {
    const live = jobs.get(job.id)
    if (!live) return pastOf(job)
    const before = known.get(job.id)
    if (before) return before
    const verdict = verdictOn(floor, live, lacksOf.get(job.id) ?? [])
    known.set(job.id, verdict)
    return verdict
  }
  return { conflicts, of }
}

function verdictOn(floor: ToldFloor, job: FloorJob, lacks: readonly Conflict[]): Verdict {
  const expectedAt = expectedOf(floor, job)
  const lateMin = Math.max(0, expectedAt - job.promisedAt)
  const unfetchedAt = unfetchedSince(job, floor)
  const endless = say('What is left of it cannot be planned as things stand.')
  const lack = lackOf(lacks) ?? (job.endless ? say('it cannot be finished as things stand') : null)
  return {
    standing: standingOf(job, { lateMin, lack, unfetchedAt }),
    expectedAt,
    lateMin,
    lack,
    lackWords: [...new Set([...lacks.map(each => each.words), ...(job.endless ? [endless] : [])])],
    unfetchedAt,
  }
}

function standingOf(
  job: FloorJob,
  { lateMin, lack, unfetchedAt }: Pick<Verdict, 'lateMin' | 'lack' | 'unfetchedAt'>,
): Verdict['standing'] {
  if (job.status === 'held') return 'none'
  if (unfetchedAt !== null) return 'unfetched'
  if (lateMin > 0) return 'late'
  return lack === null ? 'kept' : 'lacking'
}

/** A car that should be here and is not comes now at the soonest. */
function expectedOf(floor: ToldFloor, job: FloorJob): number {
  const dueAt = job.steps[0]?.startAt ?? floor.nowAt
  if (job.status !== 'booked' || floor.nowAt < dueAt + floor.gridMin) return job.handoverAt
  return projectJob(floor, job).job.handoverAt
}

/** A job that is over keeps the times it went with. */
function pastOf({ promisedAt, handoverAt, status }: Promised): Verdict {
  const lateMin = status === 'handedOver' ? Math.max(0, handoverAt - promisedAt) : 0
  return {
    standing: status === 'handedOver' ? (lateMin > 0 ? 'late' : 'kept') : 'none',
    expectedAt: handoverAt,
    lateMin,
    lack: null,
    lackWords: [],
    unfetchedAt: null,
  }
}
