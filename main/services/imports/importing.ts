/** A file looked through without writing anything, then taken in as one act, both beside the desk. */

import { dateOf } from '../../domain/calendar/index.ts'
import { importFields, type RowRules } from '../../domain/imports/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { readPhone } from '../../domain/vehicle/index.ts'
import { goodsStamp, type ImportedPieces } from '../../store/importRows.ts'
import { toJson } from '../../store/json.ts'
import type { Store, Tx } from '../../store/store.ts'
import { besideDesk, type Pace } from '../desk/beside.ts'
import { act, type Desk } from '../desk/desk.ts'
import { idsInOrder } from '../desk/ids.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ReadInput } from './inputs.ts'
import { fileOf, forgetFile, keyOf, type OpenFile, settleFile } from './opened.ts'
import { assertReadable, type PlannedRows, planRows, stillStands } from './planRows.ts'
import { readyRows, writeRows } from './writeRows.ts'

/** What came of looking through a file, or of taking it in. */
interface Outcome {
  readonly file: OpenFile
  readonly reading: string
  readonly planned: PlannedRows
  /** What else the rows were read by when it was looked through. */
  readonly stamp: string
  /** The import, once it was taken in; null: nothing is written. */
  readonly importId: string | null
}

const importing = besideDesk<Outcome | null>(error =>
  say('The file could not be taken in; nothing of it was. {message}', {
    message: error instanceof Error ? error.message : '',
  }),
)

/** Lines of each sort that a screen is sent; the file of the report has all. */
const mostShown = 200

export type ImportStandsView = ReturnType<typeof importStands>

/** How far it is, then what came of it. */
export function importStands(desk: Desk) {
  const { working, result, failed } = importing.stands(desk.store)
  return { working, failed, report: result && reportOf(result) }
}

function reportOf({ file, planned, importId }: Outcome) {
  const { added, bad, known, notes } = planned
  return {
    fileId: file.id,
    fileName: file.fileName,
    kind: file.kind,
    importId,
    rows: file.rows.length,
    added,
    /** Owners who are written down with their cars. */
    owners: file.kind === 'vehicles' ? planned.customers.length : 0,
    bad: bad.length,
    known: known.length,
    badRows: badLines({ file, planned }).slice(0, mostShown),
    knownRows: known.slice(0, mostShown),
    notes: notes.slice(0, mostShown),
  }
}

/** Every fault of every row, with the column as the file calls it. */
export function badLines({ file, planned }: Pick<Outcome, 'file' | 'planned'>) {
  const labels = new Map(importFields[file.kind].map(({ field, label }) => [field, label]))
  return planned.bad.flatMap(({ row, problems }) =>
    problems.map(({ field, value, fix }) => ({ row, column: say(labels.get(field) ?? field), value, fix })),
  )
}

/** What came of the last file, for its report. */
export const lastOutcome = (store: Store) => importing.stands(store).result

/** Looks through every row as it would be taken in; `importStands` tells. */
export function beginCheck(desk: Desk, input: ReadInput): void {
  const file = readable(desk, input)
  importing.begin(desk.store, async pace => {
    const stamp = await stampOf(desk, desk.store.read)
    const planned = await planNow(desk, file, input, pace)
    return planned && { file, reading: JSON.stringify(input.reading), planned, stamp, importId: null }
  })
}

/** Takes in what was looked through, as one act: all of it or, where it is stopped or cut off, nothing. */
export function beginTake(desk: Desk, input: ReadInput): void {
  const file = readable(desk, input)
  const seen = importing.stands(desk.store).result
  if (seen?.file.id !== file.id || seen.reading !== JSON.stringify(input.reading))
    refuse(
      'not-checked',
      { fileId: file.id },
      say('Look the rows through first: something was changed since.'),
    )
  importing.begin(desk.store, async pace => {
    const taken = await take(desk, { file, input, pace, seen })
    return taken && { file, reading: '', stamp: '', ...taken }
  })
}

/** Stops it, and waits until nothing goes on any more. */
export const stopImporting = (desk: Desk): Promise<void> => importing.stop(desk.store)

function readable(desk: Desk, { fileId, reading }: ReadInput): OpenFile {
  const file = fileOf(desk, fileId)
  assertReadable(file, reading)
  const [question] = settleFile(file, reading).ask
  if (question) refuse('ask', { [question]: null }, say('Say first how this is written in the file.'))
  if (importing.stands(desk.store).working)
    refuse(
      'busy',
      { fileId },
      say('Another file is being looked through; wait until that is done, or stop it.'),
    )
  return file
}

/** The phone numbers of a file, read in a country once: it is looked through at least twice. */
const phonesOf = new WeakMap<OpenFile, Map<string, string>>()

function phoneReader(file: OpenFile, country: string): RowRules['phone'] {
  const known = phonesOf.get(file) ?? new Map<string, string>()
  phonesOf.set(file, known)
  return text => {
    const key = `${country} ${text}`
    const phone = known.get(key) ?? readPhone(text, country).e164
    known.set(key, phone)
    return phone
  }
}

async function planNow(desk: Desk, file: OpenFile, { reading }: ReadInput, pace: Pace) {
  const { country, zone } = await shopOf(desk.store.read)
  const rules: RowRules = {
    reading: settleFile(file, reading).reading,
    phone: phoneReader(file, country),
    today: dateOf(desk.now(), zone),
    newId: idsInOrder(),
  }
  return planRows(desk.store.read, file, rules, pace)
}

/** What a row is read by besides the people and cars on file: products and coatings, the day, and where the shop is. */
async function stampOf(desk: Desk, tx: Tx): Promise<string> {
  const { country, zone } = await shopOf(tx)
  return `${await goodsStamp(tx)} ${country} ${dateOf(desk.now(), zone)}`
}

/** How often the rows are looked through again beside the desk before it has to wait for that. */
const mostAgain = 4

interface Taking {
  readonly file: OpenFile
  readonly input: ReadInput
  readonly pace: Pace
  readonly seen: Outcome
}

/**
 * What was seen is what is written. Where somebody saved a customer, a car or a product since, the rows are looked through
 * again while others go on, and only where that never comes right inside the act: a busy desk keeps no list out, and a list
 * keeps no desk waiting.
 */
async function take(desk: Desk, { file, input, pace, seen }: Taking) {
  const again = async () => {
    const stamp = await stampOf(desk, desk.store.read)
    const planned = await planNow(desk, file, input, pace)
    return planned && { planned, stamp }
  }
  for (let tries = 0; ; tries++) {
    const ready = tries === 0 ? seen : tries <= mostAgain ? await again() : undefined
    if (ready === null) return null
    const pieces = ready && readyRows(ready.planned)
    const taken = await act(
      desk,
      async (tx, audit, at) => {
        if (ready && ((await stampOf(desk, tx)) !== ready.stamp || !(await stillStands(tx, ready.planned))))
          return null
        const planned = ready?.planned ?? (await planNow(desk, file, input, pace))
        if (!planned)
          return refuse('stopped', { fileId: file.id }, say('It was stopped; nothing was taken in.'))
        const importId = await writeFile(
          tx,
          { at, who: desk.who },
          { file, input, planned, pieces: pieces ?? readyRows(planned) },
        )
        if (!(await pace.turn()))
          refuse('stopped', { fileId: file.id }, say('It was stopped; nothing was taken in.'))
        audit({
          act: 'taken in',
          entity: 'import',
          entityId: importId,
          detail: {
            fileName: file.fileName,
            kind: file.kind,
            rows: planned.added,
            leftOut: file.rows.length - planned.added,
          },
        })
        return { planned, importId }
      },
      takenOutHere,
    )
    if (taken === null) continue
    forgetFile(desk, file.id)
    return taken
  }
}

/** A file's rows are taken out again under their own name, thousands of them. */
const takenOutHere = { followed: false } as const

interface ToWrite {
  readonly file: OpenFile
  readonly input: ReadInput
  readonly planned: PlannedRows
  readonly pieces: readonly ImportedPieces[]
}

/** The rows, the file they came in with, and how it was read, for the next one like it. */
async function writeFile(
  tx: Tx,
  { at, who }: { at: number; who: string },
  { file, input, planned, pieces }: ToWrite,
) {
  const { kind, fileName, rows } = file
  const { id } = await tx.dataImport.create({
    data: {
      kind,
      fileName: fileName.trim() || say('A file'),
      at,
      who,
      fileRows: rows.length,
      added: planned.added,
    },
  })
  await writeRows(tx, { importId: id, at, who }, planned, pieces)
  const kept = { reading: toJson(input.reading), usedAt: at }
  const columns = keyOf(file)
  await tx.importMapping.upsert({ where: { columns }, create: { columns, ...kept }, update: kept })
  return id
}
