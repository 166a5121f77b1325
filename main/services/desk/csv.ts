/** Lists a spreadsheet opens. */
import Papa from 'papaparse'

/** A spreadsheet takes a file without it for one of its own country's letters; RFC 3629 allows it, readers skip it. */
export const byteOrderMark = '\uFEFF'

/** Rows as RFC 4180 writes them down, each with its line end. */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? '' : `${Papa.unparse(rows as string[][], { newline: '\r\n' })}\r\n`
}

/** The rows of a list as RFC 4180 has them, whatever stands between the cells; `most` at the most. */
export function readCsv(text: string, most: number): string[][] {
  return Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    delimitersToGuess: [',', ';', '\t', '|'],
    preview: most,
  }).data
}
