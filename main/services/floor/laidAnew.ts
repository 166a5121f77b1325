/** The rest of a job found a place again once its steps take otherwise than they were booked. */
import { projectJob } from '../../domain/floor/index.ts'
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
  const live = floor.jobs.find(each => each.id === job.id) ?? { ...job, plate: job.vehicle.plate }
  const projected = projectJob(floor, { ...live, steps: job.steps }).job
  const steps = job.steps.map((step, i) => ({ ...step, ...projected.steps[i] }))
  return { ...job, steps, handoverAt: projected.handoverAt, leavesAt: projected.leavesAt }
}
