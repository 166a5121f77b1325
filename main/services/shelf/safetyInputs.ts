/** What the shelf's screens send of data sheets. */

import { z } from 'zod'
import { storageGroups } from '../../domain/hazard/index.ts'
import { word } from '../../domain/language/index.ts'
import { date, id, number, text, versionOrNone } from '../desk/inputs.ts'

const codes = z.array(z.string().max(30)).max(60).nullable()

/** What a person reads off the data sheet and enters. Null: the sheet is silent, or nobody has looked. */
const safetyFields = z.object({
  revisedOn: date.nullable(),
  hazardCodes: codes,
  precautionaryCodes: codes,
  signalWord: z.enum(['Danger', 'Warning', 'none']).nullable(),
  protection: z.array(z.string().max(120)).max(30).nullable(),
  storageGroup: z.enum(storageGroups).nullable(),
  unNumber: z.string().max(20).nullable(),
  ph: number(word('Give the pH, such as 7.5.')).nullable(),
  /** Whom the label names: the maker or importer with its telephone number. */
  maker: text,
  note: text,
})
export type SafetyFields = z.infer<typeof safetyFields>

/** The version is that of the safety record; left out, or 0, where nothing has been entered yet. */
const ofRecord = { productId: id, version: versionOrNone.optional() }

export const safetyInput = safetyFields.extend(ofRecord)
export type SafetyInput = z.infer<typeof safetyInput>

/** A file of 15 MB as base64, with room for the rest of the call. */
export const sheetCallBytes = 21 * 1024 * 1024

/** The data sheet itself, its bytes in base64, with the day of its revision as printed on it. */
export const sheetInput = z
  .object({
    ...ofRecord,
    fileName: text,
    revisedOn: date,
    base64: z.base64(word('The file did not come whole; choose it again.')).max(sheetCallBytes),
  })
  .transform(({ base64, ...sheet }) => ({ ...sheet, bytes: new Uint8Array(Buffer.from(base64, 'base64')) }))
export type SheetInput = z.infer<typeof sheetInput>
