/** A letter to an owner, folded into a window envelope. */
import { say } from '../domain/language/index.ts'
import type { Issuer } from './kit/frame.ts'
import { drawLogo, logoSize } from './kit/logo.ts'
import { makePdf, mm, type Paper } from './kit/pdf.ts'
import { ink, quiet, Sheet } from './kit/sheet.ts'
import { drawWords, heightOf } from './kit/write.ts'

export interface OwnerLetter {
  at: number
  paper: Paper
  issuer: Issuer
  /** BCP 47. */
  language: string
  /** The owner's name and address, line by line. */
  to: string[]
  dayWords: string
  subject: string
  body: string
}

interface Window {
  /** Millimetres from the top left corner of the page; the words begin where those of the letter do. */
  x: number
  y: number
  width: number
  height: number
  /** Where the letter is folded. */
  folds: number[]
}

/**
 * Where the address shows: A4 as DIN 5008 form B, whose window of 90 × 45 mm lies 20 mm from the left and 45 mm from
 * the top with its words 5 mm further in; letter paper in thirds, for the lower left window of a No. 10 envelope (7/8
 * inch from the left). Both from memory: hold the first print against your own envelope.
 */
const windows: Record<Paper, Window> = {
  A4: { x: 25, y: 45, width: 80, height: 45, folds: [105, 210] },
  LETTER: { x: 25, y: 50, width: 99, height: 28, folds: [93.1, 186.3] },
}

/** The letter as a PDF. What does not fit on the first page goes on to the next. */
export function ownerLetterPdf(letter: OwnerLetter): Promise<Uint8Array<ArrayBuffer>> {
  const { paper, issuer, language } = letter
  const side = 25 * mm
  const margins = { top: side, left: side, bottom: side, right: side }
  const frame = { title: letter.subject, author: issuer.name, at: letter.at, paper, margins, language }
  return makePdf(frame, pdf => {
    const sheet = new Sheet(pdf, issuer.colour)
    const window = windows[paper]
    drawSender(sheet, issuer)
    drawAddress(sheet, letter, window)
    drawFolds(sheet, window)
    sheet.y = (window.y + window.height + 8) * mm
    sheet.paragraph(letter.dayWords, { size: 10, align: 'right' })
    sheet.write('H1', letter.subject, { font: 'bold', size: 11, before: 12, colour: issuer.colour })
    sheet.gap(6)
    for (const paragraph of letter.body.split(/\n\s*\n/))
      sheet.paragraph(paragraph, { size: 10.5, before: 7 })
    sheet.end()
  })
}

/** The shop's mark at the left, its name and how it is reached at the right; both end above the window. */
function drawSender(sheet: Sheet, issuer: Issuer): void {
  const { pdf, left, width } = sheet
  const { logo } = issuer
  sheet.y = 14 * mm
  if (logo) {
    const size = logoSize(logo, { width: 60 * mm, height: 20 * mm })
    sheet.figure(
      say('{name}, logo', { name: issuer.name }),
      () => drawLogo(pdf, logo, left, 14 * mm, size),
      size,
    )
  }
  sheet.y = 14 * mm
  sheet.paragraph(issuer.name, { font: 'bold', size: 13, align: 'right', colour: issuer.colour })
  const lines = issuer.lines.filter(line => line.trim() !== '').join('\n')
  if (lines === '') return
  // More lines than there is room for above the window are set smaller, never over it.
  let size = 8.5
  const room = 44 * mm - sheet.y
  while (size > 5 && heightOf(pdf, lines, { font: 'regular', size }, width) > room) size -= 0.5
  sheet.paragraph(lines, { size, align: 'right', colour: quiet })
}

/** The sender in one small line above, so that a letter that cannot be delivered finds its way back. */
function drawAddress(sheet: Sheet, { issuer, to }: OwnerLetter, window: Window): void {
  const { pdf } = sheet
  const [x, width] = [window.x * mm, window.width * mm]
  const [street = '', town = ''] = issuer.lines
  const back = [issuer.name, street, town].filter(Boolean).join(' · ')
  let small = 6.5
  while (small > 4 && heightOf(pdf, back, { font: 'regular', size: small }, width) > 4 * mm) small -= 0.25
  sheet.tag('P', () => {
    pdf.fillColor(quiet)
    drawWords(pdf, back, { font: 'regular', size: small }, { x, y: (window.y + 3) * mm, width })
  })
  // More lines than the window shows are set closer, never cut.
  const lines = to.filter(line => line.trim() !== '').join('\n')
  const room = (window.height - 9) * mm
  let size = 10.5
  while (size > 4 && heightOf(pdf, lines, { font: 'regular', size }, width) > room) size -= 0.25
  sheet.tag('P', () => {
    pdf.fillColor(ink)
    drawWords(pdf, lines, { font: 'regular', size }, { x, y: (window.y + 8) * mm, width })
  })
}

function drawFolds(sheet: Sheet, { folds }: Window): void {
  const { pdf } = sheet
  sheet.plain(() => {
    pdf.strokeColor('#999999').lineWidth(0.4)
    for (const y of folds)
      pdf
        .moveTo(4 * mm, y * mm)
        .lineTo(8 * mm, y * mm)
        .stroke()
  })
}
