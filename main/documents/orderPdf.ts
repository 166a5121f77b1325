import { bold, footPages, makePdf, type Pdf, paperOf, regular } from './pdf.ts'
import { drawTable } from './table.ts'

/** A purchase order as it is printed: everything already in words, but for the layout. */
export interface OrderSheet {
  number: number
  /** `Wednesday 15 April 2026` */
  dayWords: string
  at: number
  country: string
  shop: { name: string; address: string | null; phone: string | null; email: string | null }
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
  const frame = {
    title: `Purchase order ${order.number}`,
    author: order.shop.name,
    at: order.at,
    paper: paperOf(order.country),
    margin: 54,
  }
  return makePdf(frame, pdf => {
    const { left, top } = pdf.page.margins
    const width = pdf.page.width - 2 * left
    let y = drawHead(pdf, order, left, top, width)
    y = drawLines(pdf, order, left, y + 18, width)
    drawTotals(pdf, order, left, y + 10, width)
    footPages(pdf, `${order.shop.name} · purchase order ${order.number}`)
  })
}

function drawHead(pdf: Pdf, order: OrderSheet, x: number, y: number, width: number): number {
  const { shop, supplier } = order
  pdf
    .font(bold)
    .fontSize(18)
    .text(`Purchase order ${order.number}`, x, y, { width: width / 2 })
  pdf
    .font(regular)
    .fontSize(9)
    .text(order.dayWords, x, pdf.y + 2, { width: width / 2 })
  if (order.expectedWords) pdf.text(`Wanted ${order.expectedWords}`, { width: width / 2 })
  const leftFoot = pdf.y
  const right = x + width / 2
  pdf
    .font(bold)
    .fontSize(10)
    .text(shop.name, right, y, { width: width / 2, align: 'right' })
  pdf.font(regular).fontSize(9)
  for (const line of [shop.address, shop.phone, shop.email])
    if (line) pdf.text(line, right, pdf.y, { width: width / 2, align: 'right' })
  const foot = Math.max(leftFoot, pdf.y) + 16
  pdf.font(bold).fontSize(10).text(supplier.name, x, foot, { width })
  pdf.font(regular).fontSize(9)
  for (const line of [supplier.email, supplier.phone, supplier.account && `Our account: ${supplier.account}`])
    if (line) pdf.text(line, x, pdf.y, { width })
  return pdf.y
}

function drawLines(pdf: Pdf, order: OrderSheet, x: number, y: number, width: number): number {
  const fixed = 62 + 74 + 44 + 66 + 72
  return drawTable(
    pdf,
    x,
    y,
    [
      { title: 'Article', width: 62 },
      { title: 'Product', width: width - fixed },
      { title: 'Pack', width: 74 },
      { title: 'Packs', width: 44, align: 'right' },
      { title: 'Price a pack', width: 66, align: 'right' },
      { title: `Amount, ${order.currency}`, width: 72, align: 'right' },
    ],
    order.lines.map(line => [line.article, line.product, line.pack, line.packs, line.packPrice, line.amount]),
  )
}

function drawTotals(pdf: Pdf, order: OrderSheet, x: number, y: number, width: number): void {
  const rows = [
    ['Goods', order.goods],
    ['Carriage', order.carriage],
    ['Total', order.total],
  ] as const
  let at = y
  if (at + rows.length * 14 > pdf.page.height - pdf.page.margins.bottom) {
    pdf.addPage()
    at = pdf.page.margins.top
  }
  for (const [name, amount] of rows) {
    pdf.font(name === 'Total' ? bold : regular).fontSize(9.5)
    pdf.text(name, x + width - 220, at, { width: 100 })
    pdf.text(amount, x + width - 124, at, { width: 120, align: 'right' })
    at += 14
  }
  if (order.note.trim() === '') return
  pdf
    .font(bold)
    .fontSize(9)
    .text('Note', x, at + 10, { width })
  pdf
    .font(regular)
    .fontSize(9)
    .text(order.note, x, pdf.y + 2, { width })
}
