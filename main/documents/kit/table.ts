/** Tables that go on over the pages with their head repeated. */
import { say } from '../../domain/language/index.ts'
import { type Line, linesOf, pitchOf, type Style } from './lines.ts'
import { ink, quiet, type Sheet } from './sheet.ts'
import { drawLine } from './write.ts'

export interface Column {
  title: string
  /** Points; `fit`: as wide as its widest cell; left out: shares what the others leave. */
  width?: number | 'fit'
  align?: 'left' | 'right'
}

/** Words, or words with a quieter line under them. */
export type Cell = string | { words: string; under?: string; strong?: boolean }

interface TableStyle {
  /** Points. */
  size?: number
  /** The first cell of each row names the row to who has it read. */
  rowHeads?: boolean
  /** Nothing but its rows: no heads are printed, no lines drawn. */
  bare?: boolean
}

interface Laid {
  line: Line
  style: Style
  pitch: number
  colour: string
}

const pad = 3.5

/** Draws rows under a head that is repeated on every page; a row is torn only where it is taller than a page. */
export function drawTable(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  style: TableStyle = {},
): void {
  if (rows.length === 0) return
  const size = style.size ?? 9
  const widths = widthsOf(sheet, columns, rows, size)
  const head = columns.map((column, i) =>
    laidCell(sheet, { words: column.title, strong: true }, size - 1, widths[i]!),
  )
  const headTall = style.bare ? 0 : tallOf(head)
  sheet.need(headTall + 3 * size)
  sheet.nest('Table', table => {
    const { pdf } = sheet
    const row = (cells: Laid[][], tagOf: (i: number) => PDFKit.PDFStructureElement): void => {
      const elements: PDFKit.PDFStructureElement[] = []
      const line = pdf.struct('TR')
      table.add(line)
      cells.forEach((_, i) => {
        const element = tagOf(i)
        line.add(element)
        elements.push(element)
      })
      let left = cells
      while (left.some(lines => lines.length > 0)) {
        const room = sheet.foot - sheet.y - 2 * pad
        const now = left.map(lines => fitting(lines, room))
        left = left.map((lines, i) => lines.slice(now[i]!.length))
        drawCells(sheet, columns, widths, now, (i, draw) => elements[i]!.add(draw))
        if (!style.bare) sheet.rule()
        if (left.some(lines => lines.length > 0)) turn()
      }
      for (const element of elements) element.end()
      line.end()
    }
    const turn = () => {
      sheet.turnPage()
      if (style.bare) return
      // Printed again for the eye; read once only.
      sheet.plain(() => drawCells(sheet, columns, widths, head, (_, draw) => draw()))
      sheet.rule(sheet.colour, 1)
    }
    if (!style.bare) {
      row(head, () => pdf.struct('TH', { scope: 'Column' } as object))
      sheet.rule(sheet.colour, 1)
    }
    for (const cells of rows) {
      const laid = cells.map((cell, i) => laidCell(sheet, cell, size, widths[i]!))
      const tall = tallOf(laid)
      if (sheet.y + tall > sheet.foot && tall <= sheet.room - headTall) turn()
      row(laid, i =>
        i === 0 && style.rowHeads ? pdf.struct('TH', { scope: 'Row' } as object) : pdf.struct('TD'),
      )
    }
  })
}

/** Names and what belongs to them, in two columns: `Plate` and `DM 4711`. */
export function drawFacts(sheet: Sheet, facts: readonly (readonly [string, string])[]): void {
  const rows = facts
    .filter(([, words]) => words.trim() !== '')
    .map(([name, words]) => [{ words: name, strong: true }, words])
  drawTable(sheet, [{ title: say('What'), width: 130 }, { title: say('Is') }], rows, {
    rowHeads: true,
    bare: true,
  })
}

/** Amounts under each other at the right edge: the strong ones are what counts. */
export function drawTotals(
  sheet: Sheet,
  rows: readonly { name: string; amount: string; strong?: boolean }[],
): void {
  const cells = rows.map(({ name, amount, strong = false }) => [
    '',
    { words: name, strong },
    { words: amount, strong },
  ])
  const columns: Column[] = [
    { title: '' },
    { title: say('What'), width: 'fit', align: 'right' },
    { title: say('Amount'), width: 'fit', align: 'right' },
  ]
  drawTable(sheet, columns, cells, { bare: true })
}

function drawCells(
  sheet: Sheet,
  columns: readonly Column[],
  widths: readonly number[],
  cells: readonly Laid[][],
  tagged: (i: number, draw: () => void) => void,
): void {
  let x = sheet.left
  const tall = tallOf(cells)
  cells.forEach((lines, i) => {
    const [at, width, align] = [x + pad, widths[i]! - 2 * pad, columns[i]!.align ?? 'left']
    if (lines.length > 0)
      tagged(i, () => {
        let y = sheet.y + pad
        for (const { line, style, pitch, colour } of lines) {
          sheet.pdf.fillColor(colour)
          drawLine(sheet.pdf, line, style, { x: at, y, width, align })
          y += pitch
        }
      })
    x += widths[i]!
  })
  sheet.y += tall
}

function laidCell(sheet: Sheet, cell: Cell, size: number, width: number): Laid[] {
  const { words, under = '', strong = false } = typeof cell === 'string' ? { words: cell } : cell
  const lay = (text: string, style: Style, colour: string) =>
    text === ''
      ? []
      : linesOf(sheet.pdf, text, style, width - 2 * pad).map(line => ({
          line,
          style,
          pitch: pitchOf(sheet.pdf, style),
          colour,
        }))
  return [
    ...lay(words, { font: strong ? 'bold' : 'regular', size }, ink),
    ...lay(under, { font: 'regular', size: size - 1.5 }, quiet),
  ]
}

/** The lines from the first on that fit into so many points; one at least, so that it always goes on. */
function fitting(lines: readonly Laid[], room: number): Laid[] {
  let [many, sum] = [0, 0]
  for (const { pitch } of lines) {
    sum += pitch
    if (sum > room && many > 0) break
    many++
  }
  return lines.slice(0, many)
}

const tallOf = (cells: readonly Laid[][]) =>
  Math.max(...cells.map(lines => lines.reduce((sum, { pitch }) => sum + pitch, 0))) + 2 * pad

/** Points of each column; together they take the sheet's width. */
function widthsOf(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  size: number,
): number[] {
  const natural = (cell: Cell) =>
    Math.max(0, ...laidCell(sheet, cell, size, 10_000).map(({ line }) => line.width)) + 2 * pad + 0.01
  const fixed = columns.map(({ title, width }, i) =>
    width === 'fit'
      ? Math.min(
          sheet.width * 0.34,
          Math.max(natural({ words: title, strong: true }), ...rows.map(row => natural(row[i] ?? ''))),
        )
      : (width ?? null),
  )
  const taken = fixed.reduce<number>((sum, width) => sum + (width ?? 0), 0)
  const free = fixed.filter(width => width === null).length
  return fixed.map(width => width ?? Math.max(30, (sheet.width - taken) / free))
}
