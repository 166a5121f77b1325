/** Files that somebody has open: read once, held until they are taken in or others come. */

import { guessColumns, type ImportKind, type Reading, settle } from '../../domain/imports/index.ts'
import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { fromJson } from '../../store/json.ts'
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { OpenInput, ReadInput } from './inputs.ts'
import { readSheet, type Sheet } from './sheet.ts'

export interface OpenFile extends Sheet {
  readonly id: string
  readonly kind: ImportKind
  readonly fileName: string
}

/** As many as desks may be at it at once. */
const mostOpen = 4
const shownRows = 5

const openOf = new WeakMap<Store, Map<string, OpenFile>>()

export type OpenedView = Awaited<ReturnType<typeof openFile>>

/** Reads a file and says how it was read last, or most likely is; nothing is saved. */
export async function openFile(desk: Desk, input: OpenInput) {
  const { kind, fileName } = input
  const sheet = await readSheet(new Uint8Array(Buffer.from(input.base64, 'base64')))
  const file: OpenFile = { ...sheet, kind, fileName, id: crypto.randomUUID() }
  const open = openOf.get(desk.store) ?? new Map<string, OpenFile>()
  openOf.set(desk.store, open)
  open.set(file.id, file)
  for (const id of open.keys()) if (open.size > mostOpen) open.delete(id)
  const known = await desk.store.read.importMapping.findUnique({ where: { columns: keyOf(file) } })
  const guess: Reading = known
    ? fromJson<Reading>(known.reading)
    : { columns: guessColumns(kind, file.columns), dayOrder: null, mark: null, volume: null }
  return {
    fileId: file.id,
    kind,
    fileName,
    columns: file.columns,
    sample: file.rows
      .slice(0, shownRows)
      .map(row => file.columns.map((_, i) => (row[i] ?? '').slice(0, 200))),
    rows: file.rows.length,
    /** It is read as an earlier file with these columns was. */
    remembered: known !== null,
    ...settleFile(file, guess),
  }
}

/** By what a file is known again. */
export const keyOf = ({ kind, columns }: OpenFile) => JSON.stringify([kind, ...columns])

/** The file somebody has open. @throws Refusal `missing` */
export function fileOf(desk: Desk, fileId: string): OpenFile {
  return found(
    openOf.get(desk.store)?.get(fileId),
    { fileId },
    say('This file is not open any more; choose it again.'),
  )
}

/** What is settled by the file, and what is left to ask, for a reading that somebody has changed. */
export function settleReading(desk: Desk, { fileId, reading }: ReadInput) {
  return settleFile(fileOf(desk, fileId), reading)
}

export const settleFile = (file: OpenFile, reading: Reading) =>
  settle(file.kind, { names: file.columns, rows: file.rows }, reading)

export function forgetFile(desk: Desk, fileId: string): void {
  openOf.get(desk.store)?.delete(fileId)
}
