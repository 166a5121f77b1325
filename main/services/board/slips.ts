import { type Conflict, unfetchedSince } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { plateWords } from '../floor/jobRows.ts'
import { isLate } from '../floor/stayViews.ts'

/** Every promise of the floor that slips, that somebody or a bay is missing for, or whose car nobody fetches, soonest first. A held place has none yet. */
export async function slipsOf(tx: Tx, floor: Floor, conflicts: readonly Conflict[]) {
  const missing = new Map(conflicts.filter(each => each.uncovered).map(each => [each.jobId, each.words]))
  const jobs = floor.jobs.filter(
    job =>
      job.status !== 'held' && (isLate(job) || missing.has(job.id) || unfetchedSince(job, floor) !== null),
  )
  if (jobs.length === 0) return []
  const rows = await tx.job.findMany({
    where: { id: { in: jobs.map(job => job.id) } },
    select: { id: true, customer: { select: { name: true } } },
  })
  const names = new Map(rows.map(row => [row.id, row.customer.name]))
  return jobs
    .map(job => ({
      jobId: job.id,
      plate: plateWords(job.plate),
      customerName: names.get(job.id) ?? '',
      promisedAt: job.promisedAt,
      handoverAt: job.handoverAt,
      late: isLate(job),
      /** It was ready then, and nobody has come for it: its bay stays blocked. Null: it is not so. */
      unfetchedAt: unfetchedSince(job, floor),
      /** Who is missing or what is closed, in words; null: nothing. */
      uncovered: missing.get(job.id) ?? null,
    }))
    .sort((a, b) => a.promisedAt - b.promisedAt)
}
