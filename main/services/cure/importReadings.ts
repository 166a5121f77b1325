import { type ColumnMapping, cleanReadings, type DateOrder, rawReadings } from '../../domain/cure/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { JsonValue } from '../../store/json.ts'
import { saveReadings } from '../../store/readingRows.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { ImportPreview, ImportReport } from './conditionViews.ts'
import { liveBay } from './readings.ts'
import { guessMapping, readLog } from './readLog.ts'

const shownRows = 6

/** Looks into a logger's file: its columns, its first rows, and how it was read last time or most likely is. */
export async function previewImport(desk: Desk, { text }: { text: string }): Promise<ImportPreview> {
  const tx = desk.store.read
  const log = readLog(text)
  const known = await tx.columnMapping.findUnique({ where: { columns: JSON.stringify(log.columns) } })
  const guessed = guessMapping(log, await shopOf(tx))
  return {
    columns: log.columns,
    sample: log.rows.slice(0, shownRows).map(row => log.columns.map(column => row[column]!)),
    rows: log.rows.length,
    ...guessed,
    ...(known && {
      mapping: known.mapping as unknown as ColumnMapping,
      dateOrder: known.dateOrder as DateOrder,
      unit: known.unit as 'C' | 'F',
    }),
    remembered: known !== null,
  }
}

export interface ImportInput {
  bayId: string
  text: string
  mapping: ColumnMapping
  dateOrder: DateOrder
  unit: 'C' | 'F'
}

/**
 * Takes a logger's file into a bay: rows that cannot be right are refused one by one with their line, the rest is kept.
 * How the columns were read is remembered for the next file like it.
 */
export async function importReadings(desk: Desk, input: ImportInput): Promise<ImportReport> {
  const nowAt = desk.now()
  const log = readLog(input.text)
  for (const [field, column] of Object.entries(input.mapping))
    if (column !== null && !log.columns.includes(column))
      throw new Refusal(
        'no-column',
        `mapping.${field}`,
        column,
        `The file has no column "${column}"; choose again.`,
      )
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    await liveBay(tx, input.bayId)
    const { zone } = await shopOf(tx)
    const { readings, refused, duplicates, outOfOrder } = cleanReadings(
      rawReadings(log.rows, input.mapping, log.firstRow),
      { zone, dateOrder: input.dateOrder, unit: input.unit, latestAt: nowAt },
    )
    const added = await saveReadings(tx, input.bayId, 'imported', readings)
    const columns = JSON.stringify(log.columns)
    const kept = {
      mapping: { ...input.mapping } as JsonValue,
      dateOrder: input.dateOrder,
      unit: input.unit,
      usedAt: nowAt,
    }
    await tx.columnMapping.upsert({ where: { columns }, create: { columns, ...kept }, update: kept })
    const report = {
      rows: log.rows.length,
      added,
      duplicates: duplicates + readings.length - added,
      outOfOrder,
    }
    audit({
      act: 'readings imported',
      entity: 'bay',
      entityId: input.bayId,
      detail: { ...report, refused: refused.length },
    })
    return { ...report, refused: [...refused] }
  })
}
