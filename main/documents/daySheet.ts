/** The day on paper: who comes, who does what, which cures come to what, what moves and who goes home. */
import { say } from '../domain/language/index.ts'
import type { Issuer } from './kit/frame.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import type { Sheet } from './kit/sheet.ts'
import { type Cell, type Column, drawTable } from './kit/table.ts'

export interface DaySheetPart {
  title: string
  columns: readonly Column[]
  rows: readonly (readonly Cell[])[]
  /** Said where there are no rows. */
  none: string
}

export interface DaySheet {
  at: number
  paper: Paper
  issuer: Issuer
  /** `Wednesday 15 April 2026` */
  dayWords: string
  /** When the shop is open, and when this was printed. */
  facts: readonly (readonly [string, string])[]
  parts: readonly DaySheetPart[]
  cautions: readonly string[]
}

/** The day sheet as a PDF. */
export function daySheetPdf(day: DaySheet): Promise<Uint8Array<ArrayBuffer>> {
  const { at, paper, issuer, dayWords, facts, parts, cautions } = day
  const frame = {
    title: dayWords,
    at,
    paper,
    issuer,
    facts,
    reference: say('day sheet, {dayWords}', { dayWords }),
  }
  return makeSheet(frame, sheet => {
    for (const part of parts) drawPart(sheet, part)
    if (cautions.length === 0) return
    sheet.heading(say('Chemicals in use'))
    sheet.list(cautions, { size: 9 })
  })
}

function drawPart(sheet: Sheet, { title, columns, rows, none }: DaySheetPart): void {
  sheet.heading(title)
  if (rows.length === 0) sheet.paragraph(none)
  else drawTable(sheet, columns, rows)
}
