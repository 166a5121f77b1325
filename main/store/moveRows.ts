/** The ledger as it is read: by the page for a screen, and whole, product by product, to be costed. */
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

/** A move as costing needs it. */
export interface CostedRow {
  seq: number
  kind: string
  centi: number
  at: number
  jobId: string | null
  costMinor: number | null
  correctsSeq: number | null
}

/**
 * All moves of these products (or of all), by product, in no order. SQLite hands each product's over in one
 * text: half a million rows one by one would take many times as long.
 */
export async function costedRows(tx: Tx, productIds?: readonly string[]): Promise<Map<string, CostedRow[]>> {
  const of = productIds
    ? Prisma.sql`where m.productId in (${Prisma.join(['', ...productIds])})`
    : Prisma.empty
  const rows = await tx.$queryRaw<{ productId: string; moves: string }[]>`
    select productId, group_concat(seq || ' ' || kind || ' ' || centi || ' ' || at || ' ' || coalesce(jobId, '') || ' ' ||
      coalesce(costMinor, '') || ' ' || coalesce(correctsSeq, ''), ';') as moves
    from StockMove m ${of} group by productId`
  const number = (text: string | undefined) => (text === '' || text === undefined ? null : Number(text))
  return new Map(
    rows.map(({ productId, moves }) => [
      productId,
      moves.split(';').map(text => {
        const [seq, kind = '', centi, at, jobId, costMinor, correctsSeq] = text.split(' ')
        return {
          seq: Number(seq),
          kind,
          centi: Number(centi),
          at: Number(at),
          jobId: jobId || null,
          costMinor: number(costMinor),
          correctsSeq: number(correctsSeq),
        }
      }),
    ]),
  )
}
