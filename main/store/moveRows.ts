/** The ledger as it is read by the page, for a screen. */
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

export interface LedgerRow {
  seq: number
  kind: string
  centi: number
  at: number
  by: string
  why: string | null
  lotId: string
  lotNumber: number
  jobId: string | null
  jobNumber: number | null
  plate: string | null
  stepName: string | null
  costMinor: number | null
  correctsSeq: number | null
}

/** Moves of a product, newest first, before one of them where that is given. */
export async function ledgerRows(
  tx: Tx,
  productId: string,
  before: number | null,
  most: number,
): Promise<LedgerRow[]> {
  return tx.$queryRaw<LedgerRow[]>`
    select m.seq, m.kind, m.centi, m.at, m.by, m.why, m.lotId, l.number as lotNumber, m.jobId, j.number as jobNumber,
      v.plate, s.name as stepName, m.costMinor, m.correctsSeq
    from StockMove m
      join Lot l on l.id = m.lotId
      left join Job j on j.id = m.jobId
      left join Vehicle v on v.id = j.vehicleId
      left join JobStep s on s.jobId = m.jobId and s.position = m.position
    where m.productId = ${productId} ${before === null ? Prisma.empty : Prisma.sql`and m.seq < ${before}`}
    order by m.seq desc limit ${most}`
}
