/** What the screen of lists sends. */

import { z } from 'zod'
import { dayOrders, importKinds, volumeUnits } from '../../domain/imports/index.ts'
import { word } from '../../domain/language/index.ts'
import { accepted, id } from '../desk/inputs.ts'

/** A file of 15 MB as base64, with room for the rest of the call. */
export const listCallBytes = 21 * 1024 * 1024

const kind = z.enum(importKinds)

export const openInput = z.object({
  kind,
  fileName: z.string().max(200),
  base64: z.base64(word('The file did not come whole; choose it again.')).max(listCallBytes),
})
export type OpenInput = z.infer<typeof openInput>

const reading = z.object({
  columns: z
    .record(z.string().max(40), z.int().min(0).max(200).nullable())
    .refine(columns => Object.keys(columns).length <= 40, word('That is more fields than there are.')),
  dayOrder: z.enum(dayOrders).nullable(),
  mark: z.enum(['.', ',']).nullable(),
  volume: z.enum(volumeUnits).nullable(),
})

/** Which open file, and how it is to be read. */
export const readInput = z.object({ fileId: id, reading })
export type ReadInput = z.infer<typeof readInput>

export const undoInput = z.object({ id, accepted })
export type UndoInput = z.infer<typeof undoInput>
