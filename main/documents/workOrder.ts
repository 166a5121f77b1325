/** The work order: what is done to a car, by whom and when, with what, and what to beware of. */

import type { PictogramCode } from '../domain/hazard/index.ts'
import { say } from '../domain/language/index.ts'
import type { Fact, Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import { drawPictogram, pictogramAlt } from './kit/marks.ts'
import { mm, type Paper } from './kit/pdf.ts'
import { quiet, type Sheet } from './kit/sheet.ts'
import { drawTable } from './kit/table.ts'

export interface OrderedStep {
  name: string
  /** The product, the amount by its recipe; empty: none. */
  under: string
  bay: string
  /** `Wed 15 April 2026, 09:00` */
  from: string
  to: string
  /** Whoever works on it, with when where it is for a part alone. */
  who: string
  done: boolean
}

export interface OrderedPanel {
  name: string
  /** Where it is not as the rest of the car; empty: as the rest. */
  finish: string
  /** The least that was read on it; empty: it was not measured. */
  thinnest: string
  mind: string
}

export interface OrderedProduct {
  name: string
  signalWord: string | null
  pictograms: readonly PictogramCode[]
  hazards: readonly string[]
  protection: readonly string[]
  /** What is usual or what the sheet says, and who decides. */
  caution: string
  silences: readonly string[]
  /** What to have ready before it is opened, most dangerous first. */
  handling: readonly string[]
}

export interface WorkOrder {
  at: number
  paper: Paper
  issuer: Issuer
  number: number
  facts: readonly Fact[]
  treatments: readonly { name: string; under: string }[]
  /** Those of which something is known. */
  panels: readonly OrderedPanel[]
  /** What the paint forbids, and what was decided on it. */
  forbids: readonly string[]
  steps: readonly OrderedStep[]
  /** What is ticked off around the work, with who has done so. */
  checks: readonly { when: string; words: string; doneBy: string | null }[]
  /** Rules that bind the end: earliest pick-up, keep dry. */
  cure: readonly string[]
  products: readonly OrderedProduct[]
  tools: readonly string[]
  notes: readonly string[]
}

/** The work order as a PDF. */
export function workOrderPdf(order: WorkOrder): Promise<Uint8Array<ArrayBuffer>> {
  const frame = {
    title: say('Work order {number}', { number: order.number }),
    at: order.at,
    paper: order.paper,
    issuer: order.issuer,
    reference: say('work order {number}', { number: order.number }),
    facts: order.facts,
  }
  return makeSheet(frame, sheet => {
    sheet.heading(say('What was sold'))
    sheet.list(order.treatments.map(({ name, under }) => (under === '' ? name : `${name}: ${under}`)))
    for (const note of order.notes) sheet.paragraph(note, { before: 4, font: 'bold' })
    if (order.panels.length + order.forbids.length > 0) drawPanels(sheet, order)
    sheet.heading(say('Steps'))
    drawSteps(sheet, order.steps)
    if (order.cure.length > 0) {
      sheet.heading(say('Cure and pick-up'))
      sheet.list(order.cure)
    }
    if (order.checks.length > 0) {
      sheet.heading(say('To look at'))
      drawTable(
        sheet,
        [{ title: say('Done'), width: 'fit' }, { title: say('When'), width: 'fit' }, { title: say('What') }],
        order.checks.map(({ when, words, doneBy }) => [doneBy ? `☑ ${doneBy}` : '☐', when, words]),
      )
    }
    if (order.tools.length > 0) {
      sheet.heading(say('Tools'))
      sheet.list(order.tools)
    }
    if (order.products.length > 0) {
      sheet.heading(say('Chemicals'))
      sheet.paragraph(
        say('The data sheet, local rules and licensed practice decide. This page only reminds of them.'),
        { colour: quiet, size: 8.5 },
      )
      for (const product of order.products) drawProduct(sheet, product)
    }
  })
}

function drawPanels(sheet: Sheet, { panels, forbids }: WorkOrder): void {
  sheet.heading(say('Panels'))
  drawTable(
    sheet,
    [
      { title: say('Panel'), width: 'fit' },
      { title: say('Is') },
      { title: say('Thinnest'), width: 'fit', align: 'right' },
      { title: say('Mind') },
    ],
    panels.map(({ name, finish, thinnest, mind }) => [name, finish, thinnest, { words: mind, strong: true }]),
    { size: 8.5 },
  )
  for (const words of forbids) sheet.paragraph(words, { before: 4, font: 'bold' })
}

function drawSteps(sheet: Sheet, steps: readonly OrderedStep[]): void {
  drawTable(
    sheet,
    [
      { title: say('No.'), width: 'fit', align: 'right' },
      { title: say('Step') },
      { title: say('From'), width: 'fit' },
      { title: say('To'), width: 'fit' },
      { title: say('Bay'), width: 'fit' },
      { title: say('Who'), width: 'fit' },
      { title: say('Done'), width: 34 },
    ],
    steps.map(({ name, under, from, to, bay, who, done }, i) => [
      String(i + 1),
      { words: name, under },
      from,
      to,
      bay,
      who,
      done ? '☑' : '☐',
    ]),
    { size: 8.5 },
  )
}

const mark = 13 * mm

/** A product with its pictograms in a row; all of it on one page where it fits on one. */
function drawProduct(sheet: Sheet, product: OrderedProduct): void {
  const { name, signalWord, pictograms, hazards, protection, caution, silences, handling } = product
  sheet.need(mark + 70)
  sheet.paragraph(signalWord ? `${name}: ${say(signalWord)}` : name, { font: 'bold', before: 6 })
  if (pictograms.length > 0) {
    sheet.gap(2)
    const { y } = sheet
    pictograms.forEach((code, i) => {
      sheet.y = y
      const draw = (x: number, top: number) => drawPictogram(sheet.pdf, code, x, top, mark)
      sheet.figure(pictogramAlt(code), draw, { width: mark, height: mark }, sheet.left + i * (mark + 4))
    })
    sheet.gap(2)
  }
  if (protection.length > 0)
    sheet.paragraph(say('Wear: {protection}.', { protection: protection.join('; ') }), {
      font: 'bold',
      size: 9,
    })
  if (hazards.length > 0) sheet.paragraph(hazards.join(' '), { size: 9 })
  for (const words of handling) sheet.paragraph(words, { size: 9 })
  // With the equipment and the hazards said, the caution would say them again.
  if (protection.length === 0 || hazards.length === 0) sheet.paragraph(caution, { size: 9 })
  for (const silence of silences) sheet.paragraph(silence, { size: 9 })
}
