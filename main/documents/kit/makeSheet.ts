import type { SheetFrame } from './frame.ts'
import { drawFeet, drawHead } from './head.ts'
import { makePdf, mm, type Pdf } from './pdf.ts'
import { Sheet } from './sheet.ts'

/** Left and right so that a hole punch leaves the text alone; the same on both papers. */
const margins = { top: 16 * mm, left: 20 * mm, right: 18 * mm, bottom: 20 * mm }

/**
 * Makes a sheet of the shop: the head, what `fill` writes, and a foot on every page. `finish` is given the whole
 * document at the end, for files to go inside it.
 */
export function makeSheet(
  frame: SheetFrame,
  fill: (sheet: Sheet) => void,
  finish?: ((pdf: Pdf) => void) | undefined,
): Promise<Uint8Array<ArrayBuffer>> {
  const { title, at, paper, language, subset, keywords, issuer } = frame
  const whole = {
    title,
    at,
    paper,
    margins,
    author: issuer.name,
    ...(language && { language }),
    ...(subset && { subset }),
    ...(keywords && { keywords }),
  }
  return makePdf(whole, pdf => {
    const sheet = new Sheet(pdf, issuer.colour)
    drawHead(sheet, frame)
    fill(sheet)
    sheet.end()
    drawFeet(pdf, frame)
    finish?.(pdf)
  })
}
