import { assertFits, leavingOf, leavingTimes } from '../../domain/floor/index.ts'
import type { Plan } from '../../domain/schedule/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { moveProblem, type RestOfJob } from '../floor/movePlan.ts'
import { writePlaces } from '../floor/placed.ts'
import { productsById } from '../setUp/soldTreatments.ts'

/** Writes the moved part of a job, after one more look that it breaks no rule of the floor. */
export async function saveMove(tx: Tx, from: RestOfJob, plan: Plan, job: JobRow): Promise<void> {
  const { floor, index } = from
  const first = plan.steps[0]!
  const problem = moveProblem(from, { bays: [first.bay], from: first.start, to: first.start })
  const rest = job.steps.slice(index)
  assertFits(
    floor,
    problem,
    plan,
    rest.map(step => step.name),
  )
  const products = await productsById(
    tx,
    job.steps.flatMap(step => step.productId ?? []),
  )
  const { count } = await tx.job.updateMany({
    where: { id: job.id, version: job.version },
    data: {
      dropOffAt: job.dropOffAt,
      plannedHandoverAt: job.handoverAt,
      handoverAt: job.handoverAt,
      // Nothing is promised yet while a place is only held.
      ...(job.status === 'held' && { promisedAt: job.handoverAt }),
      ...leavingTimes(job.steps, products, leavingOf(job)),
      version: { increment: 1 },
    },
  })
  assertFresh(count, 'job', job.id)
  await writePlaces(tx, rest)
}
