/** The rest of a job found a place again once its steps take otherwise than they were booked. */
import { openMinutesBetween } from '../../domain/calendar/index.ts'
import { type FloorJob, projectJob } from '../../domain/floor/index.ts'
import { promiseOf } from '../../domain/schedule/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from './floor.ts'
import type { JobRow } from './jobRows.ts'
import { moveProblem, restOfJob } from './movePlan.ts'
import { placedJob } from './placed.ts'
import { otherVisits } from './vehicleFree.ts'

/** From the step at `index` on. Where no place is found, it runs on where it is, and what it runs into is told. */
export async function laidAnew(tx: Tx, floor: Floor, job: JobRow, index: number): Promise<JobRow> {
  const rest = restOfJob(floor, job, index, await otherVisits(tx, floor, job))
  const { earliestAt: from, latestAt: to, bays } = rest
  const offer = to !== null && to < from ? null : promiseOf(moveProblem(rest, { bays, from, to }), 'soonest')
  if (offer?.feasible) return placedJob(rest, offer.plan)
  const projected = projectJob(floor, asFloorJob(job, floor)).job
  const steps = job.steps.map((step, i) => ({ ...step, ...projected.steps[i] }))
  return { ...job, steps, handoverAt: projected.handoverAt, leavesAt: projected.leavesAt }
}

/** The longer steps planned where they are, as long as they now take in the hours there. */
function asFloorJob(job: JobRow, floor: Floor): FloorJob {
  const live = floor.jobs.find(each => each.id === job.id)
  return {
    ...(live ?? { ...job, plate: job.vehicle.plate }),
    steps: job.steps.map(step => ({
      ...step,
      plannedEndAt:
        openMinutesBetween(floor.open, step.plannedAt, step.plannedEndAt) < step.minutes
          ? step.plannedAt + step.minutes
          : step.plannedEndAt,
    })),
  }
}
