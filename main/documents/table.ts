import { bold, type Pdf, regular } from './pdf.ts'

export interface Column {
  title: string
  /** Points. */
  width: number
  align?: 'left' | 'right'
}

const pad = 4

/**
 * Draws rows under a head that is repeated on every page; a row is never torn. Returns where the next thing may begin.
 */
export function drawTable(
  pdf: Pdf,
  x: number,
  y: number,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): number {
  let at = drawHead(pdf, x, y, columns)
  for (const row of rows) {
    pdf.font(regular).fontSize(9).fillColor('#000000')
    const height =
      Math.max(
        ...columns.map((column, i) => pdf.heightOfString(row[i] ?? '', { width: column.width - 2 * pad })),
      ) +
      2 * pad
    if (at + height > pdf.page.height - pdf.page.margins.bottom) {
      pdf.addPage()
      at = drawHead(pdf, x, pdf.page.margins.top, columns)
      pdf.font(regular).fontSize(9).fillColor('#000000')
    }
    let left = x
    columns.forEach((column, i) => {
      pdf.text(row[i] ?? '', left + pad, at + pad, {
        width: column.width - 2 * pad,
        align: column.align ?? 'left',
      })
      left += column.width
    })
    at += height
    pdf.moveTo(x, at).lineTo(left, at).lineWidth(0.5).strokeColor('#bbbbbb').stroke()
  }
  return at
}

function drawHead(pdf: Pdf, x: number, y: number, columns: readonly Column[]): number {
  pdf.font(bold).fontSize(8).fillColor('#000000')
  let left = x
  for (const column of columns) {
    pdf.text(column.title, left + pad, y + pad, {
      width: column.width - 2 * pad,
      align: column.align ?? 'left',
    })
    left += column.width
  }
  const foot = y + 8 + 2.5 * pad
  pdf.moveTo(x, foot).lineTo(left, foot).lineWidth(1).strokeColor('#000000').stroke()
  return foot
}
