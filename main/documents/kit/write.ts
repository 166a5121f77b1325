/** Lines put on the page. */
import { type FontName, openFont } from './fonts.ts'
import { type Line, linesOf, pitchOf, type Style } from './lines.ts'
import { openPdfFont, type Pdf } from './pdf.ts'

export interface Place {
  /** Points from the left and the top. */
  x: number
  y: number
  width: number
  align?: 'left' | 'right' | 'centre'
  /** More follows beside it: it is read with a pause, not as one word. */
  goesOn?: boolean
}

/** Draws one line with its top at the place's y. */
export function drawLine(pdf: Pdf, line: Line, style: Style, place: Place): void {
  const spare = place.width - line.width
  let x = place.x + (place.align === 'right' ? spare : place.align === 'centre' ? spare / 2 : 0)
  for (const piece of line.pieces) {
    openPdfFont(pdf, piece.font).fontSize(style.size)
    // One baseline for every font of the line: that of the wanted one.
    const y = place.y + ascentOf(style.font, style.size) - ascentOf(piece.font, style.size)
    pdf.text(piece.words, x, y, { lineBreak: false })
    x += piece.width
  }
  // Words that go on below keep their blank, or they would be read out as one.
  if (line.goesOn || place.goesOn) pdf.text(' ', x, place.y, { lineBreak: false })
}

/** Points from the top of a line of this font to its baseline. */
function ascentOf(name: FontName, size: number): number {
  const font = openFont(name)
  return (font.ascent / font.unitsPerEm) * size
}

/** Draws words that do not run over the page; returns the points they took. */
export function drawWords(pdf: Pdf, words: string, style: Style, place: Place): number {
  const lines = linesOf(pdf, words, style, place.width)
  const pitch = pitchOf(pdf, style)
  for (const [i, line] of lines.entries()) drawLine(pdf, line, style, { ...place, y: place.y + i * pitch })
  return lines.length * pitch
}

/** How many points words take in this width. */
export function heightOf(pdf: Pdf, words: string, style: Style, width: number): number {
  return linesOf(pdf, words, style, width).length * pitchOf(pdf, style)
}
