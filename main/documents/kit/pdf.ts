/** A PDF with the shop's own fonts, a language, a title and tags, as bytes. */

import { languageNow } from '../../domain/language/index.ts'
import { type FontName, fontPath, readyFonts } from './fonts.ts'

export type Pdf = PDFKit.PDFDocument

export interface PdfFrame {
  title: string
  /** Who issues it. */
  author: string
  /** Epoch minute it was made; the same content gives the same bytes. */
  at: number
  /** Width and height in points, or the name of a paper. */
  paper: Paper | [number, number]
  /** Points. */
  margins: { top: number; left: number; bottom: number; right: number }
  /** BCP 47; English unless said. */
  language?: string
  /** The archival form it claims to keep to; none unless said. */
  subset?: 'PDF/A-3a'
  /** Found in the file by other programs, as plain ASCII. */
  keywords?: readonly string[]
}

export type Paper = 'A4' | 'LETTER'

/** Points in a millimetre. */
export const mm = 72 / 25.4

/** The paper a country's printers hold. */
export function paperOf(country: string): Paper {
  return ['US', 'CA', 'MX', 'PH'].includes(country) ? 'LETTER' : 'A4'
}

/**
 * Writes with this font from here on; it goes into the file when it is first written with. Each document opens it anew:
 * an opened font remembers which letter first asked for a shape, and the next document's would be copied out as that one.
 */
export function openPdfFont(pdf: Pdf, name: FontName): Pdf {
  return pdf.registerFont(name, fontPath(name)).font(name)
}

/** Draws a PDF and returns its bytes. */
export async function makePdf(frame: PdfFrame, draw: (pdf: Pdf) => void): Promise<Uint8Array<ArrayBuffer>> {
  // Not loaded until the first document.
  const { default: PdfDocument } = await import('pdfkit')
  await readyFonts()
  const made = new Date(frame.at * 60_000)
  const pdf = new PdfDocument({
    size: frame.paper,
    margins: frame.margins,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: frame.language ?? languageNow(),
    displayTitle: true,
    // None of the package's own fonts: what is written with goes into the file.
    font: null as unknown as string,
    info: {
      Title: inXml(frame.title),
      Author: inXml(frame.author),
      CreationDate: made,
      ModDate: made,
      ...(frame.keywords && { Keywords: frame.keywords.join(' ') }),
    },
    ...(frame.subset && { subset: frame.subset as 'PDF/A-3' }),
  })
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

/**
 * The package copies title and author into the file's XML as they are, where `Paint & Coat` would break it. What it
 * writes elsewhere comes from the value itself; only there it asks for the text.
 */
class XmlSafe extends String {
  override toString(): string {
    return this.valueOf().replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
  }
}

const inXml = (words: string) => new XmlSafe(words) as unknown as string

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
