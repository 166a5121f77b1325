import { type ColumnMapping, cleanReadings, type DateOrder, rawReadings } from '../../domain/cure/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import { fromJson, toJson } from '../../store/json.ts'
import { saveReadings } from '../../store/readingRows.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ImportInput } from './inputs.ts'
import { liveBay } from './readings.ts'
import { guessMapping, readLog } from './readLog.ts'

const shownRows = 6

export type ImportPreview = Awaited<ReturnType<typeof previewImport>>

/** Looks into a logger's file: its columns, its first rows, and how it was read last time or most likely is. */
export async function previewImport(desk: Desk, { text }: { text: string }) {
  const tx = desk.store.read
  const log = readLog(text)
  const known = await tx.columnMapping.findUnique({ where: { columns: JSON.stringify(log.columns) } })
  const guessed = guessMapping(log, await shopOf(tx))
  return {
    columns: log.columns,
    sample: log.rows.slice(0, shownRows).map(row => log.columns.map(column => row[column] ?? '')),
    rows: log.rows.length,
    ...guessed,
    ...(known && {
      mapping: fromJson<ColumnMapping>(known.mapping),
      dateOrder: known.dateOrder as DateOrder,
      unit: guessed.unit ?? (known.unit as 'C' | 'F'),
    }),
    /** The mapping is that of an earlier file with these columns. */
    remembered: known !== null,
  }
}

export type ImportReport = Awaited<ReturnType<typeof importReadings>>

/**
 * Takes a logger's file into a bay: rows that cannot be right are refused one by one with their line, the rest is kept.
 * How the columns were read is remembered for the next file like it.
 */
export function importReadings(desk: Desk, input: ImportInput) {
  const { bayId, mapping, dateOrder, unit } = input
  const log = readLog(input.text)
  for (const [field, column] of Object.entries(mapping))
    if (column !== null && !log.columns.includes(column))
      refuse(
        'no-column',
        { [`mapping.${field}`]: column },
        say('The file has no column "{column}"; choose again.', { column }),
      )
  return act(desk, async (tx, audit, at) => {
    await liveBay(tx, bayId)
    const { zone } = await shopOf(tx)
    const { readings, refused, duplicates, outOfOrder } = cleanReadings(
      rawReadings(log.rows, mapping, log.firstRow),
      { zone, dateOrder, unit, latestAt: at },
    )
    const fileName = checkNote(input.fileName ?? '', 'fileName', 200) || say('A file')
    const { id } = await tx.readingImport.create({ data: { bayId, fileName, importedAt: at, count: 0 } })
    const added = await saveReadings(tx, bayId, 'imported', readings, { importId: id })
    if (added === 0) await tx.readingImport.delete({ where: { id } })
    else await tx.readingImport.update({ where: { id }, data: { count: added } })
    const columns = JSON.stringify(log.columns)
    const kept = { mapping: toJson(mapping), dateOrder, unit, usedAt: at }
    await tx.columnMapping.upsert({ where: { columns }, create: { columns, ...kept }, update: kept })
    const report = {
      rows: log.rows.length,
      /** New readings, or colder than what was there. */
      added,
      /** Readings of a minute that was there already, in the file or the bay. */
      duplicates: duplicates + readings.length - added,
      outOfOrder,
    }
    audit({
      act: 'readings imported',
      entity: 'bay',
      entityId: bayId,
      detail: { ...report, fileName, unit, refused: refused.length },
    })
    return { ...report, refused: [...refused] }
  })
}

/** Takes a file back whole: its readings are kept, and counted no more. What other files brought stands. */
export function takeBackImport(desk: Desk, { id }: { id: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const file = found(
      await tx.readingImport.findFirst({ where: { id, takenBackAt: null } }),
      { id },
      say('This file was taken back already; look again.'),
    )
    await tx.readingImport.update({ where: { id }, data: { takenBackAt: at } })
    const { count } = await tx.reading.updateMany({
      where: { importId: id, voidedAt: null },
      data: { voidedAt: at },
    })
    audit({
      act: 'readings taken back',
      entity: 'bay',
      entityId: file.bayId,
      detail: { fileName: file.fileName, count },
    })
  })
}
