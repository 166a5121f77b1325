/** One act on a job: loaded with the floor, changed, projected again, saved with its audit line. */

import { minuteWords } from '../../domain/calendar/index.ts'
import {
  type FloorJob,
  leavingOf,
  leavingTimes,
  type ProductsById,
  projectJob,
} from '../../domain/floor/index.ts'
import { type JobStatus, statusAt } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { type FoundJob, findJobs, peopleIn } from '../../store/jobRows.ts'
import { type AuditEntry, assertFresh, type Tx } from '../../store/store.ts'
import { type Desk, stampOf } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { withLaidCoats } from '../floor/laidCoats.ts'
import { farthestSlipMin, loadFloor } from '../floor/loadFloor.ts'
import { noJob, productsOf } from './jobOnFloor.ts'

type StoredJob = Omit<FoundJob, 'status'> & { readonly status: JobStatus }

/** The job as an act finds it: as stored, and as it now stands. */
export interface JobNow {
  readonly tx: Tx
  readonly floor: Floor
  readonly row: StoredJob
  readonly products: ProductsById
  /** As projected to the present from what has happened so far. */
  readonly job: FloorJob
  /** A minute in the shop's words. */
  when(at: number): string
}

/** What an act changes; the rest of the job follows from it. */
export interface JobChange {
  /** Columns of the job itself. */
  readonly data?: Partial<
    Pick<
      StoredJob,
      | 'status'
      | 'arrivedAt'
      | 'leftAt'
      | 'promisedAt'
      | 'plannedHandoverAt'
      | 'dropOffAt'
      | 'fetchAt'
      | 'coveredBy'
      | 'coveredAt'
      | 'outsideC'
    >
  >
  /** Actual times by place in the chain; both null takes them back. */
  readonly actuals?: { index: number; actualStartAt: number | null; actualEndAt: number | null }
  /** Writes steps into the chain that were not planned; the job is read again after it. */
  readonly insert?: (tx: Tx) => Promise<void>
  /** The hold at the end of the job, as long as it now has to be. */
  readonly lastHold?: { readonly minutes: number; readonly plannedEndAt: number } | undefined
  readonly act: string
  readonly detail?: AuditEntry['detail']
  /** What belongs to the act and is saved with it or not at all: what a step drew from the shelf. */
  readonly also?: ((tx: Tx, audit: (entry: AuditEntry) => void) => Promise<unknown>) | undefined
}

/** A stored job in the floor's shape. */
export function floorJobOf(row: FoundJob, nowAt: number): FloorJob {
  const { id, number, promisedAt, plannedHandoverAt, handoverAt, arrivedAt, coveredBy, fetchAt } = row
  return {
    id,
    number,
    status: statusAt(row, nowAt),
    plate: row.vehicle.plate,
    promisedAt,
    plannedHandoverAt,
    handoverAt,
    leavesAt: row.leftAt ?? handoverAt,
    arrivedAt,
    coveredBy,
    fetchAt,
    steps: row.steps.map(step => ({ ...step, ...peopleIn(step.crew) })),
  }
}

/** Does one act in one transaction; whatever it throws, nothing is saved. */
export function changeJob(
  desk: Desk,
  { id, version }: { id: string; version: number },
  decide: (now: JobNow) => JobChange | Promise<JobChange>,
): Promise<{ version: number }> {
  const nowAt = desk.now()
  return desk.store.transact(stampOf(desk), async (tx, audit) => {
    const [stored] = await findJobs(tx, { id })
    const raw = found(stored, { id }, say(noJob))
    const row = { ...raw, status: statusAt(raw, nowAt) }
    if (row.version !== version) assertFresh(0, 'job', id)
    const floor = await loadFloor(tx, nowAt, Math.max(nowAt, row.plannedHandoverAt) + farthestSlipMin)
    const products = await productsOf(tx, row)
    const before = await withClocks(tx, nowAt, floorJobOf(row, nowAt))
    const job = row.status === 'inShop' ? projectJob(floor, before).job : before
    const when = (at: number) => minuteWords(at, floor.zone, nowAt)
    const {
      data = {},
      actuals,
      lastHold,
      insert,
      act,
      detail,
      also,
    } = await decide({ tx, floor, row, products, job, when })
    await insert?.(tx)
    const rows = insert ? { ...row, ...(await findJobs(tx, { id }))[0], status: row.status } : row
    const plain = floorJobOf(rows, nowAt)
    const changed = await withClocks(tx, nowAt, {
      ...plain,
      ...data,
      steps: plain.steps.map((step, i) =>
        actuals?.index === i
          ? { ...step, ...actuals }
          : i === plain.steps.length - 1
            ? { ...step, ...lastHold }
            : step,
      ),
    })
    // A car that is not here, or has left, is not carried forward.
    const { job: next } =
      changed.status === 'inShop' ? projectJob(floor, changed) : { job: asPlanned(changed) }
    await saveJob(tx, rows, next, data, products)
    if (actuals) {
      const { index, ...times } = actuals
      await tx.jobStep.update({ where: { id: row.steps[index]!.id }, data: times })
    }
    if (lastHold) await tx.jobStep.update({ where: { id: row.steps.at(-1)!.id }, data: lastHold })
    await also?.(tx, audit)
    audit({ act, entity: 'job', entityId: id, ...(detail !== undefined && { detail }) })
    return { version: version + 1 }
  })
}

async function withClocks(tx: Tx, nowAt: number, job: FloorJob): Promise<FloorJob> {
  const [clocked] = await withLaidCoats(tx, nowAt, [job])
  return clocked ?? job
}

/** A booked car's times are those planned: what an arrival taken back returns to. */
function asPlanned(job: FloorJob): FloorJob {
  if (job.status !== 'booked') return job
  const steps = job.steps.map(step => ({ ...step, startAt: step.plannedAt, endAt: step.plannedEndAt }))
  return { ...job, steps, handoverAt: job.plannedHandoverAt, leavesAt: job.plannedHandoverAt }
}

async function saveJob(
  tx: Tx,
  row: StoredJob,
  next: FloorJob,
  data: NonNullable<JobChange['data']>,
  products: ProductsById,
): Promise<void> {
  const { count } = await tx.job.updateMany({
    where: { id: row.id, version: row.version },
    data: {
      ...data,
      handoverAt: next.handoverAt,
      ...leavingTimes(next.steps, products, leavingOf(next)),
      version: { increment: 1 },
    },
  })
  assertFresh(count, 'job', row.id)
  for (const [i, { startAt, endAt }] of next.steps.entries()) {
    const before = row.steps[i]
    if (before && (before.startAt !== startAt || before.endAt !== endAt))
      await tx.jobStep.update({ where: { id: before.id }, data: { startAt, endAt } })
  }
}
