import type { ProductsById } from '../../domain/floor/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { wholeFloor } from '../floor/judged.ts'
import { farthestSlipMin } from '../floor/loadFloor.ts'
import { productsById } from '../setUp/soldTreatments.ts'

export const noJob = word('This job is not there; look at the board again.')

export interface JobOnFloor {
  readonly floor: Floor
  readonly job: JobRow
  readonly products: ProductsById
}

/**
 * A job as it now stands, with the floor around it as far as it may slip, at least to `untilAt`, and what it uses.
 * @throws Refusal `missing` where there is no such job.
 */
export async function jobOnFloor(tx: Tx, nowAt: number, id: string, untilAt = nowAt): Promise<JobOnFloor> {
  const times = await tx.job.findUnique({ where: { id }, select: { handoverAt: true } })
  const endAt = Math.max(untilAt, found(times, { id }, say(noJob)).handoverAt) + farthestSlipMin
  const floor = await wholeFloor(tx, nowAt, endAt)
  const [row] = await jobRows(tx, floor, { id })
  const job = found(row, { id }, say(noJob))
  return { floor, job, products: await productsOf(tx, job) }
}

/** The products that a job's steps use. */
export function productsOf(tx: Tx, job: { steps: readonly { productId: string | null }[] }) {
  return productsById(
    tx,
    job.steps.flatMap(step => step.productId ?? []),
  )
}
