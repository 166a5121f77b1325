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
  /** Points that stay with the last row: what sums it up is never on a page alone. */
  keep?: number
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
  const laid = rows.map(cells => cells.map((cell, i) => laidCell(sheet, cell, size, widths[i]!)))
  const whole = laid.map((cells, i) => tallOf(cells) + (i === rows.length - 1 ? (style.keep ?? 0) : 0))
  const fits = (i: number) => whole[i]! <= sheet.room - headTall
  const all = sumOf(whole)
  // Facts and totals are few, and stay together.
  const few = style.bare && all <= sheet.room / 3
  sheet.need(few ? all : headTall + (fits(0) ? whole[0]! : 3 * size))
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
    for (const [at, cells] of laid.entries()) {
      if (sheet.y + whole[at]! > sheet.foot && fits(at)) turn()
      row(cells, i =>
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

interface Total {
  name: string
  amount: string
  strong?: boolean
}

/** A table and what it comes to, which stays with its last row. */
export function drawSummed(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  totals: readonly Total[],
): void {
  const size = 9
  const gap = 6
  const amounts: Column[] = [
    { title: say('What'), align: 'right' },
    { title: say('Amount'), width: 'fit', align: 'right' },
  ]
  const cells = totals.map(({ name, amount, strong = false }) => [
    { words: name, strong },
    { words: amount, strong },
  ])
  const widths = widthsOf(sheet, amounts, cells, size)
  const tall = cells.map(row => tallOf(row.map((cell, i) => laidCell(sheet, cell, size, widths[i]!))))
  drawTable(sheet, columns, rows, { size, keep: gap + sumOf(tall) })
  sheet.gap(gap)
  drawTable(sheet, amounts, cells, { size, bare: true })
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

/**
 * Points of each column; together they take the sheet's width, whatever their cells say. Where columns that fit their
 * cells would leave the others too little, the widest of them give way, and their cells go on in a further line.
 */
function widthsOf(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  size: number,
): number[] {
  const natural = columns.map(({ title }, i) =>
    Math.max(
      ...[{ words: title, strong: true }, ...rows.map(row => row[i] ?? '')].map(cell =>
        oneLine(sheet, cell, size),
      ),
    ),
  )
  const fits = columns.map(({ width }) => width === 'fit')
  const free = columns.map(({ width }) => width === undefined)
  const set = sumOf(columns.map(({ width }) => (typeof width === 'number' ? width : 0)))
  const least = sumOf(natural.map((each, i) => (free[i] ? Math.min(each, sheet.width * leastShare) : 0)))
  const most = levelOf(
    natural.filter((_, i) => fits[i]),
    sheet.width - set - least,
  )
  const fitted = natural.map(each => Math.min(each, most, sheet.width * 0.34))
  const taken = set + sumOf(fitted.filter((_, i) => fits[i]))
  const each = (sheet.width - taken) / free.filter(Boolean).length
  return columns.map(({ width }, i) => (typeof width === 'number' ? width : fits[i] ? fitted[i]! : each))
}

/** Of the sheet's width, what a column without a width of its own keeps where its cells want so much. */
const leastShare = 0.22

const sumOf = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0)

/** Points of a cell whose words are not broken. */
function oneLine(sheet: Sheet, cell: Cell, size: number): number {
  return Math.max(0, ...laidCell(sheet, cell, size, 10_000).map(({ line }) => line.width)) + 2 * pad + 0.01
}

/** The most that each may have so that together they have no more than `room`: the smaller ones keep what they want. */
function levelOf(wants: readonly number[], room: number): number {
  let left = room
  const sorted = wants.toSorted((a, b) => a - b)
  for (const [i, want] of sorted.entries()) {
    const share = left / (sorted.length - i)
    if (want > share) return share
    left -= want
  }
  return Infinity
}
