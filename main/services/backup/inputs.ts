/** What the screens send about copies; see `desk/inputs.ts`. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { versionOrNone } from '../desk/inputs.ts'

const path = z
  .string()
  .max(4_096, word('That is no path: it is longer than any.'))
  .regex(
    /^\P{Cc}*$/u,
    word('That is no path: it holds a character that none can hold. Choose or type it again.'),
  )
const passphrase = z.string().max(1_000, word('That is too long: 1,000 characters at most.'))

export const copiesInput = z.object({
  /** Null, or nothing but spaces: no second place. */
  place: path.nullable(),
  /** Left out: as it is; null: copies are not locked any more. */
  passphrase: passphrase.nullable().optional(),
  version: versionOrNone,
})
export type CopiesInput = z.infer<typeof copiesInput>

/** A copy, or a folder of copies. */
export const findCopiesInput = z.object({ path })

export const copyInput = z.object({ path, passphrase: passphrase.nullable() })
export type CopyInput = z.infer<typeof copyInput>

export const restoreInput = copyInput.extend({ accepted: z.boolean().optional() })
export type RestoreInput = z.infer<typeof restoreInput>
