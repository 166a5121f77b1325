/** What was used, is booked and is under way: the flows of the shelf, read product by product. */
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** Some products, or all. */
function among(column: Prisma.Sql, ids: readonly string[] | undefined): Prisma.Sql {
  return ids ? Prisma.sql`and ${column} in (${Prisma.join(['', ...ids])})` : Prisma.empty
}

export interface PastUse {
  /** Epoch minute it was drawn. */
  at: number
  /** Epoch minute the booking was made; null for use that no step asked for. */
  knownAt: number | null
  centi: number
  /** By the recipe; null for use nobody booked. */
  expectedCenti: number | null
}

/**
 * Everything drawn since `fromAt`, by product: confirmed draws of steps with what their recipe expected, and use that no
 * step asked for, less what was put right since. SQLite gathers a product's draws in one text, because a row for each
 * of a hundred thousand draws costs far more to hand over than to add up.
 */
export async function pastUse(
  tx: Tx,
  fromAt: number,
  productIds?: readonly string[],
): Promise<Map<string, PastUse[]>> {
  const booked = await tx.$queryRaw<{ productId: string; uses: string }[]>`
    select d.productId, group_concat(d.confirmedAt || ' ' || j.createdAt || ' ' || d.actualCenti || ' ' || d.expectedCenti, ';') as uses
    from StepDraw d join Job j on j.id = d.jobId
    where d.confirmedAt >= ${fromAt} and d.actualCenti > 0 ${among(Prisma.sql`d.productId`, productIds)}
    group by ${
      // By itself, SQLite would go through all years product by product, to have the groups in order.
      productIds ? Prisma.sql`d.productId` : Prisma.sql`+d.productId`
    }`
  const other = await tx.$queryRaw<{ productId: string; uses: string }[]>`
    select m.productId, group_concat(m.at || '  ' || -m.centi || ' ', ';') as uses
    from StockMove m
    where m.kind = 'use' and m.at >= ${fromAt} and m.jobId is null
      and m.seq not in (select c.correctsSeq from StockMove c where c.kind = 'correction' and c.correctsSeq is not null)
      ${among(Prisma.sql`m.productId`, productIds)}
    group by m.productId`
  const byProduct = new Map<string, PastUse[]>()
  for (const { productId, uses } of [...booked, ...other]) {
    const list = byProduct.get(productId) ?? []
    for (const use of uses.split(';')) {
      const [at, knownAt, centi, expectedCenti] = use.split(' ')
      list.push({
        at: Number(at),
        knownAt: knownAt === '' ? null : Number(knownAt),
        centi: Number(centi),
        expectedCenti: expectedCenti === '' ? null : Number(expectedCenti),
      })
    }
    byProduct.set(productId, list)
  }
  return byProduct
}

/** A draw that is still to be taken off the shelf: booked, under way, or finished and not confirmed yet. */
export interface ComingDraw {
  productId: string
  jobId: string
  position: number
  /** Epoch minute its step starts, as now projected, or ended. */
  at: number
  finished: boolean
  centi: number
  sdCenti: number
}

/** The draws still to come, in order of time: of jobs booked and not over, in the shop, or held and not lapsed. */
export async function comingDraws(
  tx: Tx,
  nowAt: number,
  productIds?: readonly string[],
): Promise<ComingDraw[]> {
  const rows = await tx.$queryRaw<(Omit<ComingDraw, 'finished'> & { finished: number })[]>`
    select d.productId, d.jobId, d.position, coalesce(s.actualEndAt, s.startAt) as at,
      s.actualEndAt is not null as finished, d.expectedCenti as centi, d.sdCenti
    from StepDraw d
      join Job j on j.id = d.jobId
      join JobStep s on s.jobId = d.jobId and s.position = d.position
    where d.confirmedAt is null ${among(Prisma.sql`d.productId`, productIds)} and (
      j.status = 'inShop'
      or (j.status = 'handedOver' and s.actualEndAt is not null)
      or (j.status = 'booked' and j.handoverAt > ${nowAt})
      or (j.status = 'held' and j.heldUntilAt > ${nowAt})
    )
    order by at`
  return rows.map(row => ({ ...row, at: Number(row.at), finished: Boolean(row.finished) }))
}

/** How far a product's ledger goes, and the first day something of it was received on; null: nothing yet. */
export interface LedgerMark {
  seq: number | null
  receivedOn: string | null
}

/** The mark of every product counted: two look-ups in an index each. */
export async function ledgerMarks(tx: Tx): Promise<Map<string, LedgerMark>> {
  const rows = await tx.$queryRaw<
    { productId: string; seq: bigint | number | null; receivedOn: string | null }[]
  >`
    select p.productId, (select max(m.seq) from StockMove m where m.productId = p.productId) as seq,
      (select min(l.receivedOn) from Lot l where l.productId = p.productId) as receivedOn
    from ShelfProduct p`
  return new Map(
    rows.map(({ productId, seq, receivedOn }) => [
      productId,
      { seq: seq === null ? null : Number(seq), receivedOn },
    ]),
  )
}

/** When each product was last counted. */
export async function lastCounts(tx: Tx): Promise<Map<string, number>> {
  const rows = await tx.auditLine.groupBy({
    by: ['entityId'],
    where: { entity: 'stock', act: 'counted' },
    _max: { at: true },
  })
  return new Map(rows.map(row => [row.entityId, row._max.at!]))
}

/** How many steps have had what they used confirmed since a minute. */
export async function stepsConfirmed(tx: Tx, since: number): Promise<number> {
  // Told apart by the bare columns, SQLite would go through the draws of all years in their order.
  const [row] = await tx.$queryRaw<{ steps: bigint }[]>`
    select count(*) as steps from (select distinct +jobId, +position from StepDraw where confirmedAt >= ${since})`
  return Number(row?.steps ?? 0)
}
