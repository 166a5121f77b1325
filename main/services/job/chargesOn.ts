import type { Charge } from '../../domain/money/index.ts'
import type { Tx } from '../../store/store.ts'

/** What it costs beside its treatments' prices, and what is taken off them. */
export async function chargesOn(tx: Tx, jobId: string) {
  const rows = await tx.jobCharge.findMany({ where: { jobId }, orderBy: { position: 'asc' } })
  return rows.map(({ kind, words, quantity, amountMinor }) => ({
    kind: kind as Charge['kind'],
    words,
    quantity,
    amountMinor,
  }))
}
