import {
  filledStays,
  type Judged,
  leavingOf,
  nextThing,
  type ProductsById,
} from '../../domain/floor/index.ts'
import { can, isMovableFrom } from '../../domain/job/index.ts'
import { listWords } from '../../domain/words.ts'
import type { Floor } from './floor.ts'
import { type JobRow, plateWords, vehicleWords } from './jobRows.ts'

export type StayView = ReturnType<typeof stayViews>[number]

/** A job's stays as the board shows them. */
export function stayViews(job: JobRow, floor: Floor, products: ProductsById, judged: Judged) {
  const steps = job.steps.map(step => ({
    ...step,
    crew: step.crewIds.map(id => floor.crewNames.get(id) ?? ''),
  }))
  const own = judged.conflicts.filter(conflict => conflict.jobId === job.id)
  const verdict = judged.of(job)
  const movable = can(job, 'move')
  const leaving = leavingOf(job)
  const next = job.status === 'inShop' ? nextThing(job.steps, products, floor.nowAt, leaving) : null
  return filledStays({ steps, leavesAt: job.leavesAt, leaving }, products, floor.nowAt).map(stay => {
    const here = own.filter(
      ({ bayId, fromAt, toAt }) =>
        fromAt < stay.to && stay.from < toAt && (bayId === null || bayId === stay.bay),
    )
    const first = steps.findIndex(step => step.position === stay.position)
    return {
      jobId: job.id,
      jobNumber: job.number,
      version: job.version,
      status: job.status,
      bayId: stay.bay,
      bayName: floor.bayNames.get(stay.bay) ?? '',
      fromAt: stay.from,
      toAt: stay.to,
      plate: plateWords(job.vehicle.plate),
      customerName: job.customer.name,
      vehicleWords: vehicleWords(job.vehicle),
      /** The first step that starts in this stay, as `board.tryMove` takes it; null: a hold carried over from another bay. */
      position: stay.position,
      blocks: stay.blocks,
      /** How its promise stands, the same everywhere. */
      standing: verdict.standing,
      lateMin: verdict.lateMin,
      lack: verdict.lack,
      unfetchedAt: verdict.unfetchedAt,
      promisedAt: job.promisedAt,
      handoverAt: verdict.expectedAt,
      /** In words, what else wants this bay or these people at the same time. Null: nothing does. */
      conflict: here.length === 0 ? null : listWords([...new Set(here.map(each => each.words))]),
      /** Until when the car stays: dry, or the handover figure where somebody has confirmed its cover. */
      leaving,
      /** Where the car now stands in this stay with a coat on it. */
      next: stay.from <= floor.nowAt && floor.nowAt < stay.to ? next : null,
      /** Nothing in this stay has started, so it may be dragged. */
      movable: movable && first >= 0 && isMovableFrom(job.steps, first),
    }
  })
}
