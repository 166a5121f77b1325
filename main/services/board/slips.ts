import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { plateWords } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'

/**
 * Every promise of the floor that is not kept as things stand: late, somebody or a bay missing, or nobody fetches the
 * car; soonest first. A held place has none yet.
 */
export async function slipsOf(tx: Tx, floor: Floor) {
  const { of } = judged(floor)
  const jobs = floor.jobs
    .map(job => ({ job, verdict: of(job) }))
    .filter(({ verdict: { standing } }) => standing !== 'none' && standing !== 'kept')
  if (jobs.length === 0) return []
  const rows = await tx.job.findMany({
    where: { id: { in: jobs.map(({ job }) => job.id) } },
    select: { id: true, customer: { select: { name: true } } },
  })
  const names = new Map(rows.map(row => [row.id, row.customer.name]))
  return jobs
    .map(({ job, verdict }) => ({
      jobId: job.id,
      plate: plateWords(job.plate),
      customerName: names.get(job.id) ?? '',
      promisedAt: job.promisedAt,
      handoverAt: verdict.expectedAt,
      standing: verdict.standing,
      /** It was ready then, and nobody has come for it: its bay stays blocked. Null: it is not so. */
      unfetchedAt: verdict.unfetchedAt,
      /** Who is missing, what is closed or taken, in sentences; null: nothing. */
      lack: verdict.lackWords.length === 0 ? null : verdict.lackWords.join(' '),
    }))
    .sort((a, b) => a.promisedAt - b.promisedAt)
}
