/* Runs beside the desk, for xlsxBeside.ts: unpacks one XLSX file and sends back its cells as text. */

import { parentPort, workerData } from 'node:worker_threads'
import readXlsxFile from 'read-excel-file/node'

/** Whole days come as that; a time of day is kept, and passed over where a day is wanted. */
function textOf(cell: unknown): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'object' && 'toISOString' in cell)
    return String((cell as { toISOString(): string }).toISOString()).replace(/T00:00:00\.000Z$/, '')
  return typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : String(cell)
}

try {
  const sheets = await readXlsxFile(Buffer.from(workerData as Uint8Array))
  const { data = [] } = sheets.find(sheet => sheet.data.length > 0) ?? {}
  parentPort?.postMessage({ grid: data.map(row => row.map(textOf)) })
} catch {
  parentPort?.postMessage({ unread: true })
}
