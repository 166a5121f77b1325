import { say } from '../domain/language/index.ts'
import { attachElectronic } from './electronicPart.ts'
import type { Fact, Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { drawSummed } from './kit/table.ts'

/** An invoice or a credit note as it is printed: everything already in words, but for the layout. */
export interface InvoiceSheet {
  /** `Invoice INV-0042` */
  title: string
  /** In the foot: `invoice INV-0042` */
  reference: string
  at: number
  paper: Paper
  issuer: Issuer
  to: readonly string[]
  facts: readonly Fact[]
  lines: {
    name: string
    /** What was taken off it, and why; empty: nothing was. */
    under: string
    quantity: string
    price: string
    /** `8.25 %` */
    rate: string
    amount: string
  }[]
  totals: { name: string; amount: string; strong?: boolean }[]
  currency: string
  /** What stands beneath: why no tax is charged, how to pay, a note. */
  words: { heading: string; text: string }[]
  /** The same as XML, which goes inside; null: it carries none. */
  xml: string | null
}

/** The paper as a PDF of the archival form, because books are kept for ten years and only that form takes a file along. */
export function invoicePdf(invoice: InvoiceSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { title, reference, at, paper, issuer, to, facts, currency, xml } = invoice
  return makeSheet(
    { title, at, paper, issuer, reference, to, facts, subset: 'PDF/A-3a' },
    sheet => {
      drawSummed(
        sheet,
        [
          { title: say('What') },
          { title: say('Quantity'), width: 'fit', align: 'right' },
          { title: say('Price'), width: 'fit', align: 'right' },
          { title: say('Tax'), width: 'fit', align: 'right' },
          { title: say('Amount, {currency}', { currency }), width: 'fit', align: 'right' },
        ],
        invoice.lines.map(line => [
          { words: line.name, under: line.under },
          line.quantity,
          line.price,
          line.rate,
          line.amount,
        ]),
        invoice.totals,
      )
      for (const { heading, text } of invoice.words) {
        sheet.heading(heading)
        sheet.paragraph(text)
      }
    },
    xml === null ? undefined : pdf => attachElectronic(pdf, xml, at),
  )
}
