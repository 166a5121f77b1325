/** What jobs owe, added up by SQLite: ten years of invoices are not read to find the few that are open. */
import type { Tx } from './store.ts'

export interface OwedRow {
  jobId: string
  owedMinor: number
  /** The last invoice of the job, and the day it is to be paid by. */
  invoiceId: string
  dueOn: string
}

/** Every job whose invoices, less credit notes and payments, do not come to nothing. */
export async function owedRows(tx: Tx): Promise<OwedRow[]> {
  const rows = await tx.$queryRaw<(Omit<OwedRow, 'owedMinor'> & { owedMinor: bigint | number })[]>`
    select o.jobId, o.owedMinor, o.invoiceId, l.dueOn from (
      select i.jobId,
        sum(case i.kind when 'invoice' then i.withTaxMinor else -i.withTaxMinor end)
          - coalesce((select sum(p.amountMinor) from Payment p where p.jobId = i.jobId), 0) as owedMinor,
        (select l.id from Invoice l where l.jobId = i.jobId and l.kind = 'invoice'
          order by l.issuedAt desc, l.id desc limit 1) as invoiceId
      from Invoice i group by i.jobId
    ) o join Invoice l on l.id = o.invoiceId where o.owedMinor <> 0`
  return rows.map(row => ({ ...row, owedMinor: Number(row.owedMinor) }))
}

/** What a customer owes over all their jobs. */
export async function owedByCustomer(tx: Tx, customerId: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ owedMinor: bigint | number }[]>`
    select
      coalesce((select sum(case i.kind when 'invoice' then i.withTaxMinor else -i.withTaxMinor end)
        from Job j join Invoice i on i.jobId = j.id where j.customerId = ${customerId}), 0)
      - coalesce((select sum(p.amountMinor)
        from Job j join Payment p on p.jobId = j.id where j.customerId = ${customerId}), 0) as owedMinor`
  return Number(row!.owedMinor)
}
