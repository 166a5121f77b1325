/** A file of a list as columns and rows, whichever of the two forms it has. */
import { localeNow, say } from '../../domain/language/index.ts'
import { Refusal, refuse } from '../../domain/refusal.ts'
import { readCsv } from '../desk/csv.ts'
import { sheetsBeside } from './xlsxBeside.ts'

export interface Sheet {
  readonly columns: string[]
  readonly rows: string[][]
  /** The row of the file the first of these stands on. */
  readonly firstRow: number
}

/** More than any shop has, and as much as is held in memory without being felt. */
const mostRows = 50_000
const mostColumns = 100

export async function readSheet(bytes: Uint8Array): Promise<Sheet> {
  if (bytes.length === 0) refuse('file-empty', { base64: null }, say('The file is empty; choose another.'))
  const zipped = bytes[0] === 0x50 && bytes[1] === 0x4b
  const grid = zipped ? await sheetsBeside(bytes) : readCsv(textOf(bytes), mostRows + 100)
  return sheetOf(grid)
}

/** Text in UTF-8, or in UTF-16 where it says so; what is neither is taken for the letters of western Windows. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (bytes.subarray(0, 4_096).includes(0))
    refuse('file-bad', { base64: null }, say('This is no list: choose a CSV or an XLSX file.'))
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

function sheetOf(grid: readonly (readonly string[])[]): Sheet {
  const filled = (row: readonly string[] | undefined) => row?.some(cell => cell.trim() !== '') ?? false
  const head = grid.findIndex(filled)
  if (head < 0 || (!filled(grid[head + 1]) && !grid.slice(head + 1).some(filled)))
    throw new Refusal(
      'no-rows',
      'base64',
      null,
      say('There is no row below a line of column names: put the names of the columns into the first line.'),
    )
  const rows = grid.slice(head + 1).map(row => [...row])
  while (!filled(rows.at(-1))) rows.pop()
  if (rows.length > mostRows)
    refuse(
      'rows-many',
      { base64: null },
      say('There are more than {mostRows} rows; split the file.', {
        mostRows: mostRows.toLocaleString(localeNow()),
      }),
    )
  const columns = named(grid[head] ?? [])
  if (columns.length > mostColumns)
    refuse(
      'columns-many',
      { base64: null },
      say('There are {columns} columns; keep {mostColumns} or fewer.', {
        columns: columns.length,
        mostColumns,
      }),
    )
  return { columns, rows, firstRow: head + 2 }
}

/** The names of the columns, each once and none empty. */
function named(cells: readonly string[]): string[] {
  const names: string[] = []
  for (const [i, cell] of cells.entries()) {
    const name = cell.trim().slice(0, 80) || say('Column {i}', { i: i + 1 })
    names.push(names.includes(name) ? `${name} (${i + 1})` : name)
  }
  return names
}
