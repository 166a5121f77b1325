/** What jobs owe, added up by SQLite: ten years of invoices are not read to find the few that are open. */
import type { Tx } from './store.ts'

export interface OwedRow {
  jobId: string
  owedMinor: number
  /** The last invoice of the job. */
  invoiceId: string
}

/** Every job whose invoices, less credit notes and payments, do not come to nothing. */
export async function owedRows(tx: Tx): Promise<OwedRow[]> {
  const rows = await tx.$queryRaw<{ jobId: string; owedMinor: bigint | number; invoiceId: string }[]>`
    select jobId, owedMinor, invoiceId from (
      select i.jobId,
        sum(case i.kind when 'invoice' then i.withTaxMinor else -i.withTaxMinor end)
          - coalesce((select sum(p.amountMinor) from Payment p where p.jobId = i.jobId), 0) as owedMinor,
        (select l.id from Invoice l where l.jobId = i.jobId and l.kind = 'invoice'
          order by l.issuedAt desc, l.id desc limit 1) as invoiceId
      from Invoice i group by i.jobId
    ) where owedMinor <> 0`
  return rows.map(row => ({ ...row, owedMinor: Number(row.owedMinor) }))
}
