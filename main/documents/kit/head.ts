/** The head of a sheet's first page and the foot of all: who it comes from, whom it goes to, which page. */
import { say } from '../../domain/language/index.ts'
import type { SheetFrame } from './frame.ts'
import { drawLogo, logoSize } from './logo.ts'
import { mm, type Pdf } from './pdf.ts'
import { ink, quiet, type Sheet } from './sheet.ts'
import { drawWords } from './write.ts'

const small = { font: 'regular', size: 8.5 } as const

/** The issuer over the whole width, then whom it goes to and the facts beside each other, then the title. */
export function drawHead(sheet: Sheet, frame: SheetFrame): void {
  const { pdf, left, width } = sheet
  const { issuer } = frame
  const half = width / 2 - 4 * mm
  const right = left + width - half
  const top = sheet.y
  let foot = top
  if (issuer.logo) {
    const { logo } = issuer
    const size = logoSize(logo, { width: 60 * mm, height: 18 * mm })
    sheet.figure(say('{name}, logo', { name: issuer.name }), (x, y) => drawLogo(pdf, logo, x, y, size), size)
    foot = sheet.y
  } else {
    foot += block(
      sheet,
      [issuer.name],
      { x: left, y: top, width: half },
      { font: 'bold', size: 15 },
      sheet.colour,
    )
  }
  const lines = issuer.logo ? [issuer.name, ...issuer.lines] : issuer.lines
  const taken = block(sheet, lines, { x: right, y: top, width: half, align: 'right' }, small, quiet)
  sheet.y = Math.max(foot, top + taken) + 6
  sheet.rule(sheet.colour, 1.2)
  sheet.gap(12)
  const under = sheet.y
  const toFoot = block(
    sheet,
    frame.to ?? [],
    { x: left, y: under, width: half },
    { font: 'regular', size: 10 },
    ink,
  )
  let at = under
  for (const [name, words] of frame.facts ?? []) {
    const nameWidth = 32 * mm
    let tall = 0
    sheet.tag('P', () => {
      pdf.fillColor(quiet)
      tall = drawWords(pdf, name, small, { x: right, y: at, width: nameWidth - 6, goesOn: true })
      pdf.fillColor(ink)
      const place = { x: right + nameWidth, y: at, width: half - nameWidth, align: 'right' } as const
      tall = Math.max(tall, drawWords(pdf, words, small, place))
    })
    at += tall
  }
  sheet.y = Math.max(under + toFoot, at)
  if (sheet.y > under) sheet.gap(16)
  sheet.title(frame.title)
}

type Words = Parameters<typeof drawWords>

/** Lines of the head under each other; returns the points they took. */
function block(
  sheet: Sheet,
  lines: readonly string[],
  place: Words[3],
  style: Words[2],
  colour: string,
): number {
  const words = lines.filter(line => line.trim() !== '').join('\n')
  if (words === '') return 0
  let tall = 0
  sheet.tag('P', () => {
    sheet.pdf.fillColor(colour)
    tall = drawWords(sheet.pdf, words, style, place)
  })
  return tall
}

/** Writes the issuer, what the sheet is, and `page 1 of 3` at the foot of every page. */
export function drawFeet(pdf: Pdf, { issuer, reference }: SheetFrame): void {
  const { start, count } = pdf.bufferedPageRange()
  const style = { font: 'regular', size: 7.5 } as const
  for (let i = 0; i < count; i++) {
    pdf.switchToPage(start + i)
    const { width, height, margins } = pdf.page
    const y = height - margins.bottom + 6 * mm
    const all = width - margins.left - margins.right
    // A foot lies in the margin, where the package would otherwise begin a new page.
    pdf.page.margins.bottom = 0
    pdf.markContent('Artifact', { type: 'Pagination' })
    pdf.fillColor(quiet)
    const pageWidth = 30 * mm
    drawWords(pdf, shortened(`${issuer.name} · ${reference}`), style, {
      x: margins.left,
      y,
      width: all - pageWidth,
    })
    const place = { x: margins.left + all - pageWidth, y, width: pageWidth, align: 'right' } as const
    drawWords(pdf, say('page {i} of {count}', { i: i + 1, count }), style, place)
    pdf.endMarkedContent()
    pdf.page.margins.bottom = margins.bottom
  }
}

/** A foot is one line: a long name keeps its beginning. */
function shortened(words: string): string {
  const most = 110
  return words.length <= most ? words : `${words.slice(0, most - 1).trimEnd()}…`
}
