import { WENT_OFF } from '../domain/shelf/index.ts'
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** An opened container: when it was last drawn from, or found to have gone off. */
export interface OpenedRow {
  openedOn: string
  expiresOn: string | null
  lastAt: number
  wentOffAt: number | null
}

/** The latest opened containers of a product; what was taken back never happened. */
export async function openedRows(tx: Tx, productId: string, most = 100): Promise<OpenedRow[]> {
  const rows = await tx.$queryRaw<OpenedRow[]>`
    select l.openedOn, l.expiresOn, max(m.at) as lastAt,
      min(case when m.discard in (${Prisma.join([...WENT_OFF])}) then m.at end) as wentOffAt
    from Lot l join StockMove m on m.lotId = l.id
    where l.productId = ${productId} and l.openedOn is not null and m.kind <> 'correction'
      and m.seq not in (select c.correctsSeq from StockMove c where c.productId = ${productId} and c.correctsSeq is not null)
    group by l.id order by l.openedOn desc, l.id limit ${most}`
  return rows.map(row => ({
    ...row,
    lastAt: Number(row.lastAt),
    wentOffAt: row.wentOffAt === null ? null : Number(row.wentOffAt),
  }))
}
