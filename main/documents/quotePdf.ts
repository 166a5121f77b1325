import { say } from '../domain/language/index.ts'
import type { Fact, Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { drawFacts, drawSummed } from './kit/table.ts'

/** A quote as it is printed: everything already in words, but for the layout. */
export interface QuoteSheet {
  number: number
  at: number
  paper: Paper
  issuer: Issuer
  to: readonly string[]
  facts: readonly Fact[]
  currency: string
  variants: {
    /** `Better` or `Better, chosen` */
    name: string
    lines: { words: string; amount: string }[]
    total: string
    facts: readonly Fact[]
  }[]
  note: string
  /** Who signed and the drawing, a PNG, or null where they confirmed with the typed name; null: nobody yet. */
  signed: { words: string; png: Uint8Array | null } | null
}

/** The quote as a PDF. */
export function quotePdf(quote: QuoteSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { number, at, paper, issuer, to, facts, currency } = quote
  const frame = {
    title: say('Quote {number}', { number }),
    at,
    paper,
    issuer,
    reference: say('quote {number}', { number }),
    to,
    facts,
  }
  return makeSheet(frame, sheet => {
    for (const { name, lines, total, facts } of quote.variants) {
      sheet.heading(name)
      drawSummed(
        sheet,
        [
          { title: say('What') },
          { title: say('Amount, {currency}', { currency }), width: 'fit', align: 'right' },
        ],
        lines.map(line => [line.words, line.amount]),
        [{ name: say('Together'), amount: total, strong: true }],
      )
      sheet.gap(4)
      drawFacts(sheet, facts)
    }
    if (quote.note) {
      sheet.heading(say('Note'))
      sheet.paragraph(quote.note)
    }
    if (!quote.signed) return
    const { words, png } = quote.signed
    sheet.heading(say('Signed'))
    if (png)
      sheet.figure(
        say('Signature: {words}', { words }),
        // The package takes bytes of a Node buffer only.
        (x, y) => sheet.pdf.image(Buffer.from(png), x, y, { fit: [180, 60] }),
        { width: 180, height: 60 },
      )
    sheet.paragraph(png ? words : say('Confirmed with the typed name: {name}', { name: words }))
  })
}
