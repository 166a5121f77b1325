import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { versionOrNone } from '../desk/inputs.ts'

export const effortInput = z.object({
  /** Null: hands-on times as they are written. */
  promisePercent: z
    .int(word('Give a number from 50 to 99.'))
    .min(50, word('Give 50 or more.'))
    .max(99, word('Give 99 or less.'))
    .nullable(),
  version: versionOrNone,
})
export type EffortInput = z.infer<typeof effortInput>
