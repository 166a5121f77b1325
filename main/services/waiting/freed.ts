/** The place that a job had and has no more: called off, gone early, or standing elsewhere by its last act. */
import { jobStays } from '../../domain/floor/index.ts'
import { isOver } from '../../domain/job/index.ts'
import { type BaySpan, freedOf, gapUse, type StepPlaced, staysThrough } from '../../domain/waiting/index.ts'
import type { Tx } from '../../store/store.ts'
import {
  columnsOf,
  type FollowedRow,
  keyOf,
  lastActsOn,
  plainOf,
  rowsOfAct,
} from '../../store/undo/restoreRows.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'

/** How many open minutes of the bays came free by this job; 0: none. */
export async function freedMinutes(desk: Desk, { freedJobId }: { freedJobId: string }): Promise<number> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const floor = await loadFloor(tx, nowAt, nowAt)
  return gapUse(await freedBy(desk, tx, floor, freedJobId), [], floor.open).gapMin
}

/** What of the bays it had, from now on, and has no more. */
export async function freedBy(desk: Desk, tx: Tx, floor: Floor, jobId: string): Promise<BaySpan[]> {
  const [job] = await jobRows(tx, floor, { id: jobId })
  if (!job) return []
  const planned = staysThrough(
    job.steps.map(step => ({ ...step, startAt: step.plannedAt })),
    job.plannedHandoverAt,
  )
  if (isOver(job)) return freedOf(planned, [], floor.nowAt)
  const before = (await stoodBefore(desk, tx, job)) ?? planned
  return freedOf(before, jobStays(job), floor.nowAt)
}

/** How far back an act may lie among those on the job: notes and papers come in between. */
const mostActs = 10

/** Where it stood before the last act that placed it; null: that is more than a day ago. */
async function stoodBefore(desk: Desk, tx: Tx, job: JobRow): Promise<BaySpan[] | null> {
  for (const actId of await lastActsOn(tx, 'Job', job.id, mostActs)) {
    const rows = await rowsOfAct(tx, actId)
    const before = stepsBefore(desk, rows, job)
    if (before !== null) return staysThrough(before, handoverBefore(desk, rows, job))
  }
  return null
}

/** The job's steps as the act found them; null: it moved none. */
function stepsBefore(desk: Desk, rows: readonly FollowedRow[], job: JobRow): StepPlaced[] | null {
  const table = desk.store.watched.get('JobStep')
  if (!table) return null
  const steps = new Map<string, StepPlaced | null>(
    job.steps.map(step => [step.id, { ...step, startAt: step.plannedAt }]),
  )
  const placed = (kept: string): StepPlaced & { jobId: string } => {
    const of = columnsOf(table, kept)
    return {
      jobId: String(plainOf(of.jobId)),
      position: Number(plainOf(of.position)),
      bayId: String(plainOf(of.bayId)),
      startAt: Number(plainOf(of.plannedAt)),
      movedToBayId: plainOf(of.movedToBayId) as string | null,
      movedAt: plainOf(of.movedAt) as number | null,
    }
  }
  let moved = false
  // From the last change to the first: what stands in the end is what the act found.
  for (const { table: name, key, before, after } of rows) {
    if (name !== 'JobStep') continue
    const was = before === null ? null : placed(before)
    const is = after === null ? null : placed(after)
    if ((was ?? is)?.jobId !== job.id) continue
    if (was?.bayId !== is?.bayId || was?.startAt !== is?.startAt) moved = true
    steps.set(keyOf(key), was)
  }
  return moved ? [...steps.values()].filter(step => step !== null) : null
}

function handoverBefore(desk: Desk, rows: readonly FollowedRow[], job: JobRow): number {
  const table = desk.store.watched.get('Job')
  const before = rows.findLast(row => row.table === 'Job' && keyOf(row.key) === job.id)?.before
  return table && before ? Number(plainOf(columnsOf(table, before).plannedHandoverAt)) : job.plannedHandoverAt
}
