/** What is entered of what went on a car, and who signs it. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { id, position, text, versionOrNone } from '../desk/inputs.ts'

/** A panel or zone, and what its surface is. */
const zone = z.object({
  name: z.string().min(1).max(80),
  finish: z.enum(['gloss', 'satin', 'matte', 'film', 'glass', 'wheels']),
})
export type Zone = z.infer<typeof zone>

/** What a person enters: of each layer the maker's batch or the shop's bottle number, who laid it and where. */
const draft = z.object({
  note: text,
  layers: z
    .array(
      z.object({
        position,
        lot: z.string().max(200),
        who: z.string().max(200),
        zones: z.array(zone).max(100),
      }),
    )
    .max(50),
})
export type AppliedDraft = z.infer<typeof draft>

const signedBy = z.string().max(80)

/** `version` 0 where nothing was saved before. */
export const draftInput = z.object({ jobId: id, version: versionOrNone, draft })
export type DraftInput = z.infer<typeof draftInput>

export const signInput = draftInput.extend({ signedBy })
export type SignInput = z.infer<typeof signInput>

/** `correctsId` is the entry that was wrong. */
export const correctionInput = z.object({ jobId: id, correctsId: id, draft, reason: text, signedBy })
export type CorrectionInput = z.infer<typeof correctionInput>

/** The code as it was scanned or pasted; what the certificate states, where a file or somebody's typing says it. */
export const verifyInput = z.object({
  code: z.string(word('Scan or paste the code.')).max(1000),
  statement: z.string().max(50_000).nullable(),
})
export type VerifyInput = z.infer<typeof verifyInput>
