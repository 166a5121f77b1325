/** A product's safety record as a screen, a label or a sheet hands it to somebody. */

import {
  type DataSheet,
  handlingNotes,
  labelFromCodes,
  normaliseCode,
  pictogram,
  precautionaryStatement,
  type Regime,
  type SignalWord,
  type StorageGroup,
  sheetDoubts,
  silences,
  storageGroupWords,
  suggestGroup,
} from '../../domain/hazard/index.ts'
import { say } from '../../domain/language/index.ts'
import type { ProductSafety, ShelfProduct } from '../../store/rows.ts'
import type { SafetyFields } from './safetyInputs.ts'

export interface SafetyRow {
  readonly id: string
  readonly name: string
  readonly safety:
    | (ProductSafety & { sheet: { name: string; size: number; at: number; who: string } | null })
    | null
  readonly shelf: ShelfProduct | null
}

/** What to read with a product for its safety view; the sheet's bytes stay where they are. */
export const withSafety = {
  shelf: true,
  safety: { include: { sheet: { select: { name: true, size: true, at: true, who: true } } } },
} as const

const nothing: SafetyFields = {
  revisedOn: null,
  hazardCodes: null,
  precautionaryCodes: null,
  signalWord: null,
  protection: null,
  storageGroup: null,
  unNumber: null,
  ph: null,
  maker: '',
  note: '',
}

/** The fields of a record; all silent where there is none. */
export function fieldsOf(safety: ProductSafety | null): SafetyFields {
  if (!safety) return nothing
  return {
    revisedOn: safety.revisedOn,
    hazardCodes: safety.hazardCodes as string[] | null,
    precautionaryCodes: safety.precautionaryCodes as string[] | null,
    signalWord: safety.signalWord as SafetyFields['signalWord'],
    protection: safety.protection as string[] | null,
    storageGroup: safety.storageGroup as StorageGroup | null,
    unNumber: safety.unNumber,
    ph: safety.ph,
    maker: safety.maker,
    note: safety.note,
  }
}

/** What was read off the sheet, with what the shelf's own record takes from it: storage range, life after opening. */
function dataSheetOf(fields: SafetyFields, shelf: ShelfProduct | null): DataSheet {
  return {
    revisedOn: fields.revisedOn,
    hazardCodes: fields.hazardCodes,
    precautionaryCodes: fields.precautionaryCodes,
    signalWord: fields.signalWord,
    protection: fields.protection,
    storageGroup: fields.storageGroup,
    storageMinC: shelf?.storageLeastC ?? null,
    storageMaxC: shelf?.storageMostC ?? null,
    lifeAfterOpeningDays: shelf?.lifeUnlimited ? 'unlimited' : (shelf?.lifeAfterOpeningDays ?? null),
    unNumber: fields.unNumber,
  }
}

/** Whether there is a sheet at all: filed here, or somebody has read off it what it says of its hazards. */
export function sheetKept(safety: Pick<ProductSafety, 'sheetFileId' | 'hazardCodes'> | null): boolean {
  return safety !== null && (safety.sheetFileId !== null || safety.hazardCodes !== null)
}

export type SafetyView = ReturnType<typeof safetyView>

export function safetyView(row: SafetyRow, regime: Regime) {
  const fields = fieldsOf(row.safety)
  const sheet = row.safety?.sheet
  const codes = fields.hazardCodes ?? []
  const label = labelFromCodes(codes, regime, fields.signalWord)
  const dataSheet = dataSheetOf(fields, row.shelf)
  const suggested = fields.storageGroup === null ? suggestGroup(codes, fields.ph) : null
  return {
    ...fields,
    productId: row.id,
    productName: row.name,
    /** 0 where nothing has been entered yet. */
    version: row.safety?.version ?? 0,
    regime,
    /** The data sheet as a file: same origin, behind the guard. */
    sheet: sheet ? { path: `/documents/sheet/${row.id}`, ...sheet } : null,
    /** What the codes entered call for; the maker's label decides. */
    label: {
      pictograms: label.pictograms.map(code => ({ code, symbol: pictogram(code).symbol })),
      signalWord: shownWord(fields.signalWord, label.signalWord),
      hazards: label.statements.map(each => ({ ...each })),
      precautions: (fields.precautionaryCodes ?? []).map(code => ({
        code: normaliseCode(code),
        text: precautionaryStatement(code, regime),
      })),
      /** Called for and given up for another pictogram, with the rule. */
      givenUp: label.givenUp.map(({ pictogram: code, rule }) => ({ code, rule })),
      /** Codes whose category decides something the code does not tell. */
      unsure: [...label.unsure],
    },
    /** What the codes suggest where no group was entered. */
    suggestedGroup: suggested,
    groupWords: fields.storageGroup === null ? null : say(storageGroupWords[fields.storageGroup]),
    /** What to have ready before it is opened, each with where the rule is written. */
    handling: handlingNotes(fields),
    silences: silences(dataSheet, sheetKept(row.safety)).map(({ field, message }) => ({
      field,
      words: message,
    })),
    doubts: sheetDoubts(dataSheet, regime),
    caution: cautionOf(row.name, fields, label.signalWord),
  }
}

/** The sheet's own word stands above what the codes call for: it decides. */
function shownWord(read: SafetyFields['signalWord'], worked: SignalWord | null): SignalWord | null {
  if (read === 'none') return null
  return read ?? worked
}

/** The same from a product's record alone. */
export function cautionFrom(name: string, safety: ProductSafety, regime: Regime): string {
  const fields = fieldsOf(safety)
  return cautionOf(
    name,
    fields,
    labelFromCodes(fields.hazardCodes ?? [], regime, fields.signalWord).signalWord,
  )
}

/** One line for whoever is handed the chemical: never more than was read off its sheet, and who decides. */
function cautionOf(name: string, fields: SafetyFields, worked: SignalWord | null): string {
  const { hazardCodes, protection } = fields
  if (hazardCodes === null)
    return say(
      '{name}: no hazards are entered from its data sheet. Treat it as harmful until somebody has read the sheet; the sheet and local rules decide.',
      { name },
    )
  const word = shownWord(fields.signalWord, worked)
  const wear =
    protection === null
      ? say('the sheet is silent on protective equipment, ask the supplier')
      : protection.length === 0
        ? say('the sheet asks for no protective equipment')
        : say('wear {protection}', { protection: protection.join(', ') })
  const fluoride =
    fields.storageGroup === 'fluoride'
      ? ` ${say('It holds fluoride: face shield on, first-aid plan at hand, medical help after any contact even without pain.')}`
      : ''
  return say(
    '{name}: {word}{wear}.{fluoride} Read its safety data sheet first; the sheet and local rules decide.',
    { name, word: word ? `${say(word).toUpperCase()}, ` : '', wear, fluoride },
  )
}
