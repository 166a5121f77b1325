import type { Tx } from './store.ts'

/** The containers of a product that a job has drawn from, less what was taken back. */
export async function laidLots(
  tx: Tx,
  jobId: string,
  productId: string,
): Promise<{ id: string; number: number; batch: string | null }[]> {
  const rows = await tx.$queryRaw<{ id: string; number: number; batch: string | null }[]>`
    select l.id, l.number, l.batch from StockMove m join Lot l on l.id = m.lotId
    where m.jobId = ${jobId} and m.productId = ${productId} and m.kind in ('use', 'correction')
    group by l.id having sum(m.centi) < 0 order by l.number`
  return rows.map(row => ({ ...row, number: Number(row.number) }))
}
