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
    select o.jobId, o.owedMinor, l.id as invoiceId, l.dueOn from (
      select i.jobId,
        sum(case i.kind when 'invoice' then i.withTaxMinor else -i.withTaxMinor end)
          - coalesce((select sum(p.amountMinor) from Payment p where p.jobId = i.jobId), 0) as owedMinor
      from Invoice i group by i.jobId having owedMinor <> 0
    ) o cross join Invoice l on l.id = (
      select n.id from Invoice n where n.jobId = o.jobId and n.kind = 'invoice' order by n.issuedAt desc, n.id desc limit 1
    )`
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
