/** A letter to an owner, folded into a window envelope. */
import { bold, makePdf, mm, type Pdf, paperOf, regular } from './pdf.ts'

export interface OwnerLetter {
  at: number
  country: string
  shop: { name: string; address: string | null; phone: string | null; email: string | null }
  /** The owner's name and address, line by line. */
  to: string[]
  dayWords: string
  subject: string
  body: string
}

interface Window {
  /** Millimetres from the top left corner of the page. */
  x: number
  y: number
  width: number
  height: number
  /** Where the letter is folded. */
  folds: number[]
}

/**
 * Where the address shows: A4 as DIN 5008 form B with its window of 90 × 45 mm, 20 mm from the left and 45 mm from the
 * top; letter paper in thirds, for the lower left window of a No. 10 envelope (7/8 inch from the left). Both from
 * memory: hold the first print against your own envelope.
 */
const windows: Record<'A4' | 'LETTER', Window> = {
  A4: { x: 20, y: 45, width: 85, height: 45, folds: [105, 210] },
  LETTER: { x: 24, y: 50, width: 100, height: 28, folds: [93.1, 186.3] },
}

/** The letter as a PDF. What does not fit on the first page goes on to the next. */
export function ownerLetterPdf(letter: OwnerLetter): Promise<Uint8Array<ArrayBuffer>> {
  const paper = paperOf(letter.country)
  const frame = {
    title: letter.subject,
    author: letter.shop.name,
    at: letter.at,
    paper,
    margin: 25 * mm,
  }
  return makePdf(frame, pdf => {
    const window = windows[paper]
    drawSender(pdf, letter)
    drawAddress(pdf, letter, window)
    drawFolds(pdf, window)
    const { left, right } = pdf.page.margins
    const width = pdf.page.width - left - right
    pdf.font(regular).fontSize(10).fillColor('#000000')
    pdf.text(letter.dayWords, left, (window.y + window.height + 8) * mm, { width, align: 'right' })
    pdf
      .font(bold)
      .fontSize(11)
      .text(letter.subject, left, pdf.y + 14, { width })
    pdf
      .font(regular)
      .fontSize(10.5)
      .text(letter.body, left, pdf.y + 12, { width, lineGap: 2.5 })
  })
}

function drawSender(pdf: Pdf, { shop }: OwnerLetter): void {
  const { left, right } = pdf.page.margins
  const width = pdf.page.width - left - right
  pdf
    .font(bold)
    .fontSize(13)
    .fillColor('#000000')
    .text(shop.name, left, 14 * mm, { width, align: 'right' })
  pdf.font(regular).fontSize(8.5)
  for (const line of [...(shop.address ?? '').split(/\r?\n/), shop.phone, shop.email])
    if (line) pdf.text(line, left, pdf.y + 1, { width, align: 'right' })
}

/** The sender in one small line above, so that a letter that cannot be delivered finds its way back. */
function drawAddress(pdf: Pdf, { shop, to }: OwnerLetter, window: Window): void {
  const [x, width] = [window.x * mm, window.width * mm]
  const back = [shop.name, ...(shop.address ?? '').split(/\r?\n/)].filter(Boolean).join(' · ')
  pdf
    .font(regular)
    .fontSize(6.5)
    .fillColor('#444444')
    .text(back, x, (window.y + 3) * mm, { width, height: 4 * mm, ellipsis: true })
  const lines = to.filter(line => line.trim() !== '')
  // More lines than the window shows are set closer, never cut.
  const room = (window.height - 9) * mm
  const pitch = Math.min(13.5, room / lines.length)
  pdf.fontSize(Math.min(10.5, pitch * 0.8)).fillColor('#000000')
  for (const [i, line] of lines.entries())
    pdf.text(line, x, (window.y + 8) * mm + i * pitch, { width, lineBreak: false, ellipsis: true })
}

function drawFolds(pdf: Pdf, { folds }: Window): void {
  pdf.strokeColor('#999999').lineWidth(0.4)
  for (const y of folds)
    pdf
      .moveTo(4 * mm, y * mm)
      .lineTo(8 * mm, y * mm)
      .stroke()
}
