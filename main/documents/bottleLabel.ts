import type { PictogramCode } from '../domain/hazard/index.ts'
import { drawPictogram, drawQr } from './marks.ts'
import { bold, makePdf, mm, type Pdf, regular } from './pdf.ts'

/** A label for a decanted bottle: what is in it, what it can do to you, and where its record is. */
export interface BottleLabel {
  productName: string
  shopName: string
  at: number
  /** `decanted 15 April 2026 from no. 412, use by 3 July 2026` */
  originWords: string
  /** Whom the maker's label names, with its telephone number; empty where nobody entered it. */
  maker: string
  signalWord: string | null
  pictograms: PictogramCode[]
  hazards: string[]
  precautions: string[]
  protection: string[]
  /** Where the data sheet is silent or missing, in sentences. */
  silences: string[]
  /** Where the record is, as the QR code says it. */
  recordUrl: string
  /** The address works on the shop's own computer only. */
  onlyHere: boolean
}

// At least 52 × 74 mm up to 3 litres, pictograms at least 16 × 16 mm where possible. Source: CLP Annex I, table 1.3
// (from memory). A7 on its side holds them with room for the sentences.
const width = 105 * mm
const height = 74 * mm
const edge = 4 * mm
const mark = 17 * mm

/** The label as a PDF of one page, 105 × 74 mm. */
export function bottleLabelPdf(label: BottleLabel): Promise<Uint8Array<ArrayBuffer>> {
  const frame = {
    title: `Label: ${label.productName}`,
    author: label.shopName,
    at: label.at,
    paper: [width, height] as [number, number],
    margin: 0,
  }
  return makePdf(frame, pdf => {
    const marksWidth = drawMarks(pdf, label)
    const x = edge + marksWidth
    const room = width - edge - x
    pdf.font(bold).fontSize(fitting(pdf, label.productName, bold, room, 14, 8))
    pdf.text(label.productName, x, edge, { width: room, lineBreak: false, ellipsis: true, height: 18 })
    let y = edge + 18
    if (label.signalWord) {
      pdf.font(bold).fontSize(12).text(label.signalWord.toUpperCase(), x, y, { width: room })
      y += 15
    }
    const foot = height - edge - 17
    drawSentences(pdf, label, x, y, room, foot - 2 - y)
    pdf
      .moveTo(edge, foot)
      .lineTo(width - edge, foot)
      .lineWidth(0.5)
      .strokeColor('#000000')
      .stroke()
    pdf.font(regular).fontSize(6.3).fillColor('#000000')
    pdf.text(label.originWords, edge, foot + 2.5, {
      width: width - 2 * edge,
      lineBreak: false,
      ellipsis: true,
    })
    pdf.text(
      [
        ...(label.onlyHere ? ['The code opens on the shop’s own computer only'] : []),
        label.maker || 'Maker: see the data sheet',
        label.shopName,
        'The data sheet decides.',
      ].join(' · '),
      edge,
      foot + 10.5,
      { width: width - 2 * edge, lineBreak: false, ellipsis: true },
    )
  })
}

/** Pictograms in one or two columns at the left with the QR code under them; returns the width they take. */
function drawMarks(pdf: Pdf, label: BottleLabel): number {
  const perColumn = 2
  label.pictograms.forEach((code, i) => {
    const column = Math.floor(i / perColumn)
    drawPictogram(pdf, code, edge + column * (mark + 2), edge + (i % perColumn) * (mark + 2), mark)
  })
  const columns = Math.max(1, Math.ceil(label.pictograms.length / perColumn))
  drawQr(pdf, label.recordUrl, edge - 4, edge + perColumn * (mark + 2), 20 * mm)
  return Math.max(columns * (mark + 2), 17 * mm) + 8
}

/** The sentences at the largest size that fits; what is left over at the smallest is named as being on the sheet. */
function drawSentences(pdf: Pdf, label: BottleLabel, x: number, y: number, room: number, tall: number): void {
  const { hazards, precautions, protection, silences } = label
  const blocks = [
    hazards.map(sentence).join(' '),
    protection.length > 0 ? `Wear: ${protection.join('; ')}.` : '',
    silences.join(' '),
    precautions.map(sentence).join(' '),
  ].filter(Boolean)
  const text = blocks.join('\n')
  for (let size = 8; size >= 5.5; size -= 0.25) {
    pdf.font(regular).fontSize(size)
    if (pdf.heightOfString(text, { width: room, lineGap: 0.5 }) <= tall) {
      pdf.text(text, x, y, { width: room, lineGap: 0.5 })
      return
    }
  }
  const more = ' … more on the data sheet.'
  const words = text.split(' ')
  const fits = (count: number) =>
    pdf.heightOfString(words.slice(0, count).join(' ') + more, { width: room, lineGap: 0.5 }) <= tall
  let count = words.length
  while (count > 0 && !fits(count)) count--
  pdf.text(words.slice(0, count).join(' ') + more, x, y, { width: room, lineGap: 0.5 })
}

/** The statements come without their full stop. */
function sentence(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`
}

/** The largest size from `most` down to `least` at which the words fit on one line. */
function fitting(pdf: Pdf, words: string, font: string, room: number, most: number, least: number): number {
  for (let size = most; size > least; size -= 0.5)
    if (pdf.font(font).fontSize(size).widthOfString(words) <= room) return size
  return least
}
