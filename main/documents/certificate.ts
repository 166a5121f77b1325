/** The certificate of what was applied to a car: it stays with the car, so nothing of its owner stands in it. */
import { say } from '../domain/language/index.ts'
import { type StatementSection, statementText } from '../domain/proof/index.ts'
import type { Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import { drawQr } from './kit/marks.ts'
import { mm, type Paper } from './kit/pdf.ts'
import { quiet } from './kit/sheet.ts'
import { drawFacts } from './kit/table.ts'

export interface Certificate {
  /** When the record was signed: the paper is the same whenever it is printed. */
  at: number
  paper: Paper
  issuer: Issuer
  /** `212-1` */
  reference: string
  sections: readonly StatementSection[]
  /** The number of the page that corrects this one. */
  correctedBy: number | null
  code: string
}

const codeSize = 38 * mm

/** The certificate as a PDF. Code and statement also stand in the file's keywords, where `verify` finds them. */
export function certificatePdf(certificate: Certificate): Promise<Uint8Array<ArrayBuffer>> {
  const { at, paper, issuer, reference, sections, correctedBy, code } = certificate
  const frame = {
    title: say('Certificate of applied coating'),
    at,
    paper,
    issuer,
    reference: say('certificate {reference}', { reference }),
    // It is to be read in decades: the archival form brings everything it needs along.
    subset: 'PDF/A-3a' as const,
    keywords: [code, `STATEMENT.${Buffer.from(statementText(sections)).toString('base64url')}`],
  }
  return makeSheet(frame, sheet => {
    if (correctedBy !== null)
      sheet.paragraph(
        say('Page {correctedBy} corrects this one: ask for its certificate.', { correctedBy }),
        { font: 'bold' },
      )
    for (const { title, facts } of sections) {
      sheet.heading(title)
      drawFacts(sheet, facts)
    }
    sheet.gap(8)
    sheet.paragraph(
      say(
        'This certificate says what was applied, when and in what conditions. It does not say that a coating is fit for any use: the product’s data sheet decides.',
      ),
      { colour: quiet, size: 8.5 },
    )
    sheet.need(codeSize + 26)
    sheet.heading(say('Is it genuine?'))
    sheet.paragraph(
      say(
        'The code holds a signature of every fact above, and nothing about the owner. The shop checks it at once; the page the shop gives out with it checks it on any computer.',
      ),
    )
    sheet.gap(4)
    const alt = say('Code that proves certificate {reference}', { reference })
    sheet.figure(alt, (x, y) => drawQr(sheet.pdf, code, x - 6, y, codeSize), {
      width: codeSize,
      height: codeSize,
    })
    sheet.paragraph(code, { size: 6.5, colour: quiet })
  })
}
