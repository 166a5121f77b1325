/** The care sheet: what a car's owner does and leaves until when, made from what was applied to it. */
import { say, word } from '../domain/language/index.ts'
import type { Fact, Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { quiet } from './kit/sheet.ts'
import { drawFacts, drawTable } from './kit/table.ts'

export interface CareSheet {
  at: number
  paper: Paper
  issuer: Issuer
  /** `Care of your Marlo Wendrel (DM 4711)` */
  subject: string
  to: readonly string[]
  facts: readonly Fact[]
  /** Until when and from when: keep dry, first wash, full cure. */
  times: readonly Fact[]
  /** How those times were reckoned. */
  reckoned: string
  applied: readonly { product: string; step: string }[]
  /** Visits that follow, with the day each is due. */
  visits: readonly { title: string; due: string; window: string }[]
}

// Common practice, no source; the data sheet of what was applied decides.
const always = [
  word('Wash by hand with a mild shampoo, a clean mitt and two buckets, top to bottom, in the shade.'),
  word('Take bird droppings, sap and insects off the same day, soaked first and never rubbed dry.'),
  word(
    'No automatic brushes, no polish or abrasive, no solvent on coated panels. Ask us before anybody polishes it.',
  ),
  word('After the wash dry it with a soft towel: drops that dry in the sun leave marks.'),
]

/** The care sheet as a PDF. */
export function careSheetPdf(care: CareSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { at, paper, issuer, subject, to, facts, times, reckoned, applied, visits } = care
  const frame = { title: subject, at, paper, issuer, to, facts, reference: say('care sheet') }
  return makeSheet(frame, sheet => {
    sheet.heading(say('The first days'))
    drawFacts(sheet, times)
    sheet.paragraph(reckoned, { colour: quiet, size: 8.5, before: 4 })
    sheet.heading(say('What was applied'))
    drawTable(
      sheet,
      [{ title: say('Product') }, { title: say('Step') }],
      applied.map(({ product, step }) => [product, step]),
    )
    sheet.heading(say('From then on'))
    sheet.list(always.map(each => say(each)))
    if (visits.length > 0) {
      sheet.heading(say('When to come back'))
      drawTable(
        sheet,
        [
          { title: say('Visit') },
          { title: say('Due'), width: 'fit' },
          { title: say('Earliest, latest'), width: 'fit' },
        ],
        visits.map(({ title, due, window }) => [title, { words: due, strong: true }, window]),
      )
    }
    sheet.paragraph(
      say('The data sheet of what was applied decides. Ask us where it and this page differ.'),
      {
        colour: quiet,
        size: 8.5,
        before: 8,
      },
    )
  })
}
