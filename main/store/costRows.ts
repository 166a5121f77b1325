/** The ledger as it is costed: what is not costed yet, and what was. */
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** A move as costing needs it. */
export interface CostedRow {
  seq: number
  productId: string
  kind: string
  centi: number
  at: number
  costMinor: number | null
  correctsSeq: number | null
}

/** The first moves that are not costed yet, in ledger order. */
export function uncostedRows(tx: Tx, most: number): Promise<CostedRow[]> {
  return tx.$queryRaw<CostedRow[]>`
    select seq, productId, kind, centi, at, costMinor, correctsSeq from StockMove
    where seq > (select coalesce(max(seq), 0) from MoveCost) order by seq limit ${most}`
}

export interface MoveCostRow {
  seq: number
  averageMinor: number
  fifoMinor: number
}

/** What moves took and cost that were costed before. */
export function costsOf(tx: Tx, seqs: readonly number[]): Promise<(MoveCostRow & { centi: number })[]> {
  return tx.$queryRaw<(MoveCostRow & { centi: number })[]>`
    select c.seq, c.averageMinor, c.fifoMinor, m.centi from MoveCost c join StockMove m on m.seq = c.seq
    where c.seq in (select value from json_each(${JSON.stringify(seqs)}))`
}

export async function saveCosts(tx: Tx, rows: readonly MoveCostRow[]): Promise<void> {
  const list = rows.map(({ seq, averageMinor, fifoMinor }) => [seq, averageMinor, fifoMinor])
  await tx.$executeRaw`
    insert into MoveCost (seq, averageMinor, fifoMinor)
    select value ->> 0, value ->> 1, value ->> 2 from json_each(${JSON.stringify(list)})`
}

/** What one job used of one product: its uses, less what was put right since. */
export interface JobUse {
  jobId: string
  productId: string
  centi: number
  averageMinor: number
  fifoMinor: number
  /** The last of its moves. */
  at: number
}

/** What one job used, or all jobs that used something since a minute, product by product. */
export async function jobUses(tx: Tx, of: { jobId: string } | { sinceAt: number }): Promise<JobUse[]> {
  const jobs =
    'jobId' in of
      ? Prisma.sql`${of.jobId}`
      : Prisma.sql`select jobId from StockMove where kind in ('use', 'correction') and at >= ${of.sinceAt}`
  // With a bare kind, SQLite would rather go through the uses of all years than look up these jobs.
  const rows = await tx.$queryRaw<Record<keyof JobUse, string | number | bigint>[]>`
    select m.jobId, m.productId, -sum(m.centi) as centi, -sum(c.averageMinor) as averageMinor,
      -sum(c.fifoMinor) as fifoMinor, max(m.at) as at
    from StockMove m join MoveCost c on c.seq = m.seq
    where m.jobId in (${jobs}) and (+m.kind = 'use' or (
      +m.kind = 'correction' and exists (select 1 from StockMove s where s.seq = m.correctsSeq and s.kind = 'use')
    ))
    group by m.jobId, m.productId order by m.jobId, m.productId`
  return rows.map(row => ({
    jobId: String(row.jobId),
    productId: String(row.productId),
    centi: Number(row.centi),
    averageMinor: Number(row.averageMinor),
    fifoMinor: Number(row.fifoMinor),
    at: Number(row.at),
  }))
}
