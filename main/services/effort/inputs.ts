import { z } from 'zod'
import { versionOrNone } from '../desk/inputs.ts'

export const effortInput = z.object({
  /** Null: hands-on times as they are written. */
  promisePercent: z
    .int('Give a number from 50 to 99.')
    .min(50, 'Give 50 or more.')
    .max(99, 'Give 99 or less.')
    .nullable(),
  version: versionOrNone,
})
export type EffortInput = z.infer<typeof effortInput>
