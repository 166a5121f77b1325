/** Three weeks of finished visits that can be laid end to end: the demo's bookings, each as it was planned. */
import { jobStays, leavingOf, leavingTimes, type ProductsById } from '../../../main/domain/floor/index.ts'
import { floorJobOf } from '../../../main/services/job/jobChange.ts'
import { type FoundJob, findJobs } from '../../../main/store/jobRows.ts'
import type { Tx } from '../../../main/store/store.ts'

export const weeks = 3

const periodMin = weeks * 7 * 1440

export interface Draw {
  position: number
  productId: string
  expectedCenti: number
  sdCenti: number
}

export interface Visit {
  job: FoundJob
  draws: readonly Draw[]
}

/** One stretch in which a bay or a person is taken. */
interface Taken {
  who: string
  from: number
  to: number
}

/**
 * The demo's visits as if all had gone by plan, without those that would meet the same weeks laid before or after
 * it in a bay, or take a person twice.
 */
export async function demoWeeks(tx: Tx, products: ProductsById, nowAt: number): Promise<Visit[]> {
  const rows = await findJobs(tx, {})
  const draws = Map.groupBy(await tx.stepDraw.findMany(), draw => draw.jobId)
  const taken: Taken[] = []
  const visits: Visit[] = []
  for (const row of rows) {
    const job = byPlan(row)
    const own = takenBy(job, nowAt)
    if (own.some(each => taken.some(other => meets(each, other)))) continue
    taken.push(...own)
    const floorJob = floorJobOf(job, nowAt)
    const leaving = leavingTimes(floorJob.steps, products, leavingOf(floorJob))
    visits.push({ job: { ...job, ...leaving }, draws: draws.get(row.id) ?? [] })
  }
  return visits
}

function byPlan(job: FoundJob): FoundJob {
  const steps = job.steps.map(step => ({
    ...step,
    startAt: step.plannedAt,
    endAt: step.plannedEndAt,
    actualStartAt: step.kind === 'work' ? step.plannedAt : null,
    actualEndAt: step.kind === 'work' ? step.plannedEndAt : null,
  }))
  const handoverAt = job.plannedHandoverAt
  return {
    ...job,
    steps,
    status: 'handedOver',
    heldUntilAt: null,
    promisedAt: handoverAt,
    handoverAt,
    arrivedAt: job.dropOffAt,
    leftAt: handoverAt,
  }
}

function takenBy(job: FoundJob, nowAt: number): Taken[] {
  return [
    ...jobStays(floorJobOf(job, nowAt)).map(({ bay, from, to }) => ({ who: bay, from, to })),
    ...job.steps.flatMap(step =>
      step.crew.map(({ crewId }) => ({ who: crewId, from: step.startAt, to: step.endAt })),
    ),
  ]
}

/** Whether two stretches of one bay or person meet, the same weeks earlier or later too. */
function meets(a: Taken, b: Taken): boolean {
  return (
    a.who === b.who &&
    [-periodMin, 0, periodMin].some(shift => a.from + shift < b.to && b.from < a.to + shift)
  )
}
