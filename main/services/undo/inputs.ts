import { z } from 'zod'
import { rowNumber } from '../desk/inputs.ts'

/** Which act to take back; none: the last one of this desk. */
export const takeBackInput = z.object({ actId: rowNumber.optional() })
export type TakeBackInput = z.infer<typeof takeBackInput>
