import type { PictogramCode } from '../domain/hazard/index.ts'
import { say } from '../domain/language/index.ts'
import type { FontName } from './kit/fonts.ts'
import { linesOf, type Style } from './kit/lines.ts'
import { drawPictogram, drawQr, pictogramAlt } from './kit/marks.ts'
import { makePdf, mm, type Pdf } from './kit/pdf.ts'
import { ink, Sheet } from './kit/sheet.ts'
import { drawLine, drawWords, heightOf } from './kit/write.ts'

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
    title: say('Label: {productName}', { productName: label.productName }),
    author: label.shopName,
    at: label.at,
    paper: [width, height] as [number, number],
    margins: { top: 0, left: 0, bottom: 0, right: 0 },
  }
  return makePdf(frame, pdf => {
    const sheet = new Sheet(pdf, ink)
    const marksWidth = drawMarks(sheet, label)
    const x = edge + marksWidth
    const room = width - edge - x
    oneLine(sheet, 'H1', label.productName, 'bold', { x, y: edge, room, most: 14, least: 8 })
    let y = edge + 18
    if (label.signalWord) {
      oneLine(sheet, 'P', say(label.signalWord).toUpperCase(), 'bold', { x, y, room, most: 12, least: 12 })
      y += 15
    }
    const foot = height - edge - 25
    drawSentences(sheet, label, x, y, room, foot - 2 - y)
    const whole = width - 2 * edge
    sheet.plain(() =>
      pdf
        .moveTo(edge, foot)
        .lineTo(width - edge, foot)
        .lineWidth(0.5)
        .strokeColor('#000000')
        .stroke(),
    )
    const small = { x: edge, room: whole, most: 6.3, least: 4.5 }
    oneLine(sheet, 'P', label.originWords, 'regular', { ...small, y: foot + 2.5 })
    const from = [label.maker || say('Maker: see the data sheet'), label.shopName]
    oneLine(sheet, 'P', from.join(' · '), 'regular', { ...small, y: foot + 10.5 })
    const last = [
      say('The data sheet decides.'),
      ...(label.onlyHere ? [say('The code opens on the shop’s own computer only')] : []),
    ]
    oneLine(sheet, 'P', last.join(' · '), 'regular', { ...small, y: foot + 18.5 })
    sheet.end()
  })
}

/** Pictograms in one or two columns at the left with the QR code under them; returns the width they take. */
function drawMarks(sheet: Sheet, label: BottleLabel): number {
  const { pdf } = sheet
  const perColumn = 2
  label.pictograms.forEach((code, i) => {
    const column = Math.floor(i / perColumn)
    const [x, y] = [edge + column * (mark + 2), edge + (i % perColumn) * (mark + 2)]
    const bbox = [x, y, x + mark, y + mark]
    sheet.tag('Figure', () => drawPictogram(pdf, code, x, y, mark), { alt: pictogramAlt(code), bbox })
  })
  const columns = Math.max(1, Math.ceil(label.pictograms.length / perColumn))
  const top = edge + perColumn * (mark + 2)
  const bbox = [edge - 4, top, edge - 4 + 20 * mm, top + 20 * mm]
  const alt = say('A code that leads to the record of this bottle')
  sheet.tag('Figure', () => drawQr(pdf, label.recordUrl, edge - 4, top, 20 * mm), { alt, bbox })
  return Math.max(columns * (mark + 2), 17 * mm) + 8
}

/** The sentences at the largest size that fits; what is left over at the smallest is named as being on the sheet. */
function drawSentences(
  sheet: Sheet,
  label: BottleLabel,
  x: number,
  y: number,
  room: number,
  tall: number,
): void {
  const { hazards, precautions, protection, silences } = label
  const { pdf } = sheet
  const blocks = [
    hazards.map(sentence).join(' '),
    protection.length > 0 ? say('Wear: {protection}.', { protection: protection.join('; ') }) : '',
    silences.join(' '),
    precautions.map(sentence).join(' '),
  ].filter(Boolean)
  const text = blocks.join('\n')
  const fits = (words: string, size: number) => heightOf(pdf, words, { font: 'regular', size }, room) <= tall
  const draw = (words: string, size: number) =>
    sheet.tag('P', () => {
      pdf.fillColor(ink)
      drawWords(pdf, words, { font: 'regular', size }, { x, y, width: room })
    })
  const least = 5.5
  let size = 8
  while (size > least && !fits(text, size)) size -= 0.25
  if (fits(text, size)) {
    draw(text, size)
    return
  }
  const more = ` ${say('… more on the data sheet.')}`
  const words = text.split(' ')
  const first = (count: number) => words.slice(0, count).join(' ') + more
  let [few, many] = [0, words.length]
  while (few < many) {
    const middle = Math.ceil((few + many) / 2)
    if (fits(first(middle), least)) few = middle
    else many = middle - 1
  }
  draw(first(few), least)
}

/** The statements come without their full stop. */
function sentence(words: string): string {
  return /[.!?…]$/.test(words) ? words : `${words}.`
}

interface OneLine {
  x: number
  y: number
  room: number
  /** The sizes tried, from `most` down. */
  most: number
  least: number
}

/** Words on one line: at the largest size they fit in, and cut where even the smallest is too large. */
function oneLine(sheet: Sheet, tag: string, words: string, font: FontName, place: OneLine): void {
  const { pdf } = sheet
  let style: Style = { font, size: place.most }
  while (style.size > place.least && naturalWidth(pdf, words, style) > place.room)
    style = { font, size: style.size - 0.5 }
  const [first] = linesOf(pdf, words, style, place.room - style.size)
  const cut = naturalWidth(pdf, words, style) > place.room
  const [line] = cut
    ? linesOf(pdf, `${first!.words}…`, style, place.room)
    : linesOf(pdf, words, style, 10_000)
  sheet.tag(tag, () => {
    pdf.fillColor(ink)
    drawLine(pdf, { ...line!, goesOn: false }, style, { x: place.x, y: place.y, width: place.room })
  })
}

function naturalWidth(pdf: Pdf, words: string, style: Style): number {
  return Math.max(...linesOf(pdf, words, style, 10_000).map(line => line.width))
}
