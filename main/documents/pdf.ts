/** What every document of the shop begins with: a PDF with its own fonts, so that any name prints as it is written. */
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import PdfDocument from 'pdfkit'

export type Pdf = PDFKit.PDFDocument

export interface PdfFrame {
  title: string
  /** Who issues it. */
  author: string
  /** Epoch minute it was made; the same content gives the same bytes. */
  at: number
  /** Width and height in points, or the name of a paper. */
  paper: 'A4' | 'LETTER' | [number, number]
  /** Points. */
  margin: number
}

/** Points in a millimetre. */
export const mm = 72 / 25.4

export const regular = 'regular'
export const bold = 'bold'

// Two folders up lies assets/, from here as from the bundle of the desktop app.
const fontFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'assets', 'fonts')
const fontFile = { regular: 'DejaVuSansCondensed.ttf', bold: 'DejaVuSansCondensed-Bold.ttf' }

/** The paper a country's printers hold. */
export function paperOf(country: string): 'A4' | 'LETTER' {
  return ['US', 'CA', 'MX', 'PH'].includes(country) ? 'LETTER' : 'A4'
}

/** Draws a PDF and returns its bytes. */
export function makePdf(frame: PdfFrame, draw: (pdf: Pdf) => void): Promise<Uint8Array<ArrayBuffer>> {
  const made = new Date(frame.at * 60_000)
  const pdf = new PdfDocument({
    size: frame.paper,
    margin: frame.margin,
    bufferPages: true,
    lang: 'en',
    displayTitle: true,
    font: join(fontFolder, fontFile.regular),
    info: { Title: frame.title, Author: frame.author, CreationDate: made, ModDate: made },
  })
  for (const name of [regular, bold] as const) pdf.registerFont(name, join(fontFolder, fontFile[name]))
  pdf.font(regular)
  const parts: Uint8Array[] = []
  return new Promise((resolve, reject) => {
    pdf.on('data', (part: Uint8Array) => parts.push(part))
    pdf.on('error', reject)
    pdf.on('end', () => resolve(joined(parts)))
    try {
      draw(pdf)
      pdf.end()
    } catch (error) {
      reject(error as Error)
    }
  })
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

/** Writes `page 1 of 3` and a line of the issuer's at the foot of every page. */
export function footPages(pdf: Pdf, words: string): void {
  const { start, count } = pdf.bufferedPageRange()
  for (let i = 0; i < count; i++) {
    pdf.switchToPage(start + i)
    const { width, height, margins } = pdf.page
    const y = height - margins.bottom + 12
    // A foot lies in the margin, where text would otherwise begin a new page.
    pdf.page.margins.bottom = 0
    pdf.font(regular).fontSize(7.5).fillColor('#555555')
    pdf.text(words, margins.left, y, { width: width - 2 * margins.left, lineBreak: false })
    pdf.text(count === 1 ? '' : `page ${i + 1} of ${count}`, margins.left, y, {
      width: width - 2 * margins.left,
      align: 'right',
      lineBreak: false,
    })
    pdf.page.margins.bottom = margins.bottom
  }
}
