import { z } from 'zod'
import { storageGroups } from '../domain/hazard/index.ts'
import { date, id, number, text, versionOrNone } from '../services/desk/inputs.ts'
import { getSafety, saveSafety, uploadSheet } from '../services/shelf/safety.ts'
import { safetyWarnings } from '../services/shelf/safetyWarnings.ts'

import { procedure, router } from './trpc.ts'

const codes = z.array(z.string().max(30)).max(60).nullable()
const version = versionOrNone.optional()

/** A file of 15 MB as base64, with room for the rest of the call. */
export const sheetCallBytes = 21 * 1024 * 1024

export const safety = router({
  get: procedure.input(z.object({ productId: id })).query(({ ctx, input }) => getSafety(ctx, input)),

  save: procedure
    .input(
      z.object({
        productId: id,
        version,
        revisedOn: date.nullable(),
        hazardCodes: codes,
        precautionaryCodes: codes,
        signalWord: z.enum(['Danger', 'Warning', 'none']).nullable(),
        protection: z.array(z.string().max(120)).max(30).nullable(),
        storageGroup: z.enum(storageGroups).nullable(),
        unNumber: z.string().max(20).nullable(),
        ph: number('Give the pH, such as 7.5.').nullable(),
        maker: text,
        note: text,
      }),
    )
    .mutation(({ ctx, input }) => saveSafety(ctx, input)),

  /** The data sheet itself, as a file: its bytes in base64. */
  uploadSheet: procedure
    .input(
      z.object({
        productId: id,
        fileName: text,
        revisedOn: date,
        base64: z.base64('The file did not come whole; choose it again.').max(sheetCallBytes),
        version,
      }),
    )
    .mutation(({ ctx, input: { base64, ...input } }) =>
      uploadSheet(ctx, { ...input, bytes: new Uint8Array(Buffer.from(base64, 'base64')) }),
    ),

  warnings: procedure.query(({ ctx }) => safetyWarnings(ctx)),
})
