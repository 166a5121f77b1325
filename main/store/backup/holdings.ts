import type { Holdings } from '../../domain/backup/index.ts'
import type { Tx } from '../store.ts'

/** Lines looked at for the last moment something was saved: what was done under a clock set wrong is among them. */
const lines = 500

/** A place held for a caller, or let go again, is no job yet. */
const booked = { status: { notIn: ['held', 'lapsed'] } }

/** The latest moment, in epoch minutes, of what was saved last. */
export async function lastSavedAt(tx: Tx): Promise<number | null> {
  const [row] = await tx.$queryRaw<{ at: number | bigint | null }[]>`
    select max(at) as at from (select at from AuditLine order by rowid desc limit ${lines})`
  return row?.at == null ? null : Number(row.at)
}

/** What the open database holds. */
export async function holdingsOf(tx: Tx): Promise<Holdings> {
  const [shop, customers, vehicles, jobs, lastJob, savedAt] = await Promise.all([
    tx.shop.findFirst({ select: { name: true, zone: true } }),
    tx.customer.count(),
    tx.vehicle.count(),
    tx.job.count({ where: booked }),
    tx.job.findFirst({
      where: booked,
      select: { number: true, dropOffAt: true },
      orderBy: { number: 'desc' },
    }),
    lastSavedAt(tx),
  ])
  return { shop, customers, vehicles, jobs, lastJob, lastSavedAt: savedAt }
}
