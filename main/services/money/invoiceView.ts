/** An invoice or credit note as it was issued, for screens and papers. */
import { say } from '../../domain/language/index.ts'
import { type RateTotal, sumMinor } from '../../domain/money/index.ts'
import { found } from '../../domain/refusal.ts'
import { fromJson } from '../../store/json.ts'
import type { Invoice, InvoiceLine } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'

/** Who issues an invoice, as printed on it. */
export interface Seller {
  name: string
  address: string
  country: string
  phone: string
  email: string
  taxNumber: string
  payTo: string
}

/** Whom it is for. */
export interface Buyer {
  name: string
  address: string
  country: string
  email: string
  taxNumber: string
}

export type InvoiceView = Awaited<ReturnType<typeof invoiceView>>

/** `INV-0042`; the number is never cut. */
export function numberWords({ series, number }: { series: string; number: number }): string {
  return `${series}-${String(number).padStart(4, '0')}`
}

/** Everything an invoice or a credit note says, from what was kept when it was issued and from nothing else. */
export async function invoiceView(tx: Tx, id: string) {
  const row = found(
    await tx.invoice.findUnique({
      where: { id },
      include: {
        lines: { orderBy: { position: 'asc' } },
        corrects: { select: { id: true, series: true, number: true, issuedOn: true } },
        credits: { orderBy: { number: 'asc' }, include: { lines: true } },
        job: { select: { number: true, customerId: true } },
      },
    }),
    { id },
    say('This invoice is not there.'),
  )
  const credited = creditedByLine(row.credits)
  const { lines, corrects, credits, job } = row
  return {
    id,
    kind: row.kind as 'invoice' | 'credit',
    series: row.series,
    number: row.number,
    name: numberWords(row),
    jobId: row.jobId,
    jobNumber: job.number,
    customerId: job.customerId,
    issuedAt: row.issuedAt,
    issuedOn: row.issuedOn,
    dueOn: row.dueOn,
    suppliedOn: row.suppliedOn,
    currency: row.currency,
    taxInPrices: row.taxInPrices,
    seller: fromJson<Seller>(row.seller),
    buyer: fromJson<Buyer>(row.buyer),
    carWords: row.carWords,
    note: row.note,
    exemption: row.exemption,
    reason: row.reason,
    allowanceReason: row.allowanceReason,
    taxPerRate: fromJson<(RateTotal & { name: string })[]>(row.taxes),
    lines: lines.map(({ invoiceId: _, ...line }) => ({
      ...line,
      category: line.category as RateTotal['category'],
      /** What may still be credited of it. */
      leftMinor: line.amountMinor - line.allowanceMinor - (credited.get(line.id) ?? 0),
    })),
    allowanceMinor: sumMinor(lines.map(line => line.allowanceMinor)),
    withoutTaxMinor: row.withoutTaxMinor,
    taxMinor: row.taxMinor,
    withTaxMinor: row.withTaxMinor,
    depositMinor: row.depositMinor,
    carriedMinor: row.carriedMinor,
    /** To be paid when it was issued. */
    dueMinor: row.withTaxMinor - row.depositMinor - row.carriedMinor,
    corrects: corrects && { id: corrects.id, name: numberWords(corrects), issuedOn: corrects.issuedOn },
    creditedMinor: sumMinor(credits.map(credit => credit.withTaxMinor)),
    credits: credits.map(({ id, series, number, issuedOn, withTaxMinor }) => ({
      id,
      name: numberWords({ series, number }),
      issuedOn,
      withTaxMinor,
    })),
  }
}

/** What was credited of each line of an invoice, by the line's id. */
export function creditedByLine(credits: readonly (Invoice & { lines: readonly InvoiceLine[] })[]) {
  const sums = new Map<string, number>()
  for (const { creditsLineId, amountMinor } of credits.flatMap(credit => credit.lines))
    if (creditsLineId !== null) sums.set(creditsLineId, (sums.get(creditsLineId) ?? 0) + amountMinor)
  return sums
}
