import type { Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { drawTable, drawTotals } from './kit/table.ts'

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
    title: `Purchase order ${order.number}`,
    at: order.at,
    paper: order.paper,
    issuer: order.issuer,
    reference: `purchase order ${order.number}`,
    to: [supplier.name, supplier.email ?? '', supplier.phone ?? ''],
    facts: [
      ['Date', order.dayWords],
      ...(order.expectedWords ? [['Wanted', order.expectedWords] as const] : []),
      ...(supplier.account ? [['Our account', supplier.account] as const] : []),
    ] as const,
  }
  return makeSheet(frame, sheet => {
    drawTable(
      sheet,
      [
        { title: 'Article', width: 'fit' },
        { title: 'Product' },
        { title: 'Pack', width: 'fit' },
        { title: 'Packs', width: 'fit', align: 'right' },
        { title: 'Price a pack', width: 'fit', align: 'right' },
        { title: `Amount, ${order.currency}`, width: 'fit', align: 'right' },
      ],
      order.lines.map(line => [
        line.article,
        line.product,
        line.pack,
        line.packs,
        line.packPrice,
        line.amount,
      ]),
    )
    sheet.gap(6)
    drawTotals(sheet, [
      { name: 'Goods', amount: order.goods },
      { name: 'Carriage', amount: order.carriage },
      { name: 'Total', amount: order.total, strong: true },
    ])
    if (order.note.trim() === '') return
    sheet.heading('Note')
    sheet.paragraph(order.note)
  })
}
