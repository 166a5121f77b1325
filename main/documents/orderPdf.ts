import { say } from '../domain/language/index.ts'
import type { Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { drawSummed } from './kit/table.ts'

/** A purchase order as it is printed: everything already in words, but for the layout. */
export interface OrderSheet {
  number: number
  /** `Wednesday 15 April 2026` */
  dayWords: string
  at: number
  paper: Paper
  issuer: Issuer
  supplier: { name: string; email: string | null; phone: string | null; account: string }
  lines: {
    article: string
    product: string
    /** `12 × 500 ml` */
    pack: string
    packs: string
    packPrice: string
    amount: string
  }[]
  goods: string
  carriage: string
  total: string
  currency: string
  note: string
  /** `by Monday 20 April` */
  expectedWords: string | null
}

/** The purchase order as a PDF. */
export function orderPdf(order: OrderSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { supplier } = order
  const frame = {
    title: say('Purchase order {number}', { number: order.number }),
    at: order.at,
    paper: order.paper,
    issuer: order.issuer,
    reference: say('purchase order {number}', { number: order.number }),
    to: [supplier.name, supplier.email ?? '', supplier.phone ?? ''],
    facts: [
      [say('Date'), order.dayWords],
      ...(order.expectedWords ? [[say('Wanted'), order.expectedWords] as const] : []),
      ...(supplier.account ? [[say('Our account'), supplier.account] as const] : []),
    ] as const,
  }
  return makeSheet(frame, sheet => {
    drawSummed(
      sheet,
      [
        { title: say('Article'), width: 'fit' },
        { title: say('Product') },
        { title: say('Pack'), width: 'fit' },
        { title: say('Packs'), width: 'fit', align: 'right' },
        { title: say('Price a pack'), width: 'fit', align: 'right' },
        { title: say('Amount, {currency}', { currency: order.currency }), width: 'fit', align: 'right' },
      ],
      order.lines.map(line => [
        line.article,
        line.product,
        line.pack,
        line.packs,
        line.packPrice,
        line.amount,
      ]),
      [
        { name: say('Goods'), amount: order.goods },
        { name: say('Carriage'), amount: order.carriage },
        { name: say('Total'), amount: order.total, strong: true },
      ],
    )
    if (order.note.trim() === '') return
    sheet.heading(say('Note'))
    sheet.paragraph(order.note)
  })
}
