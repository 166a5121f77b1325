import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { conditions, scopes } from '../../domain/shop/index.ts'
import { date, id, oneRow, text } from '../desk/inputs.ts'

/** Whoever cannot wait for a place: which car, what, and the days that suit. */
export const waitInput = z.object({
  vehicleId: id,
  treatmentIds: z.array(id).min(1, word('Choose at least one treatment.')).max(20),
  condition: z.enum(conditions),
  scope: z.enum(scopes),
  /** The first day the car may come, and the day it is home at the latest. */
  fromOn: date,
  toOn: date,
  /** Days of the week it can be brought, 1 for Monday to 7; none: any. */
  weekdays: z.array(z.int().min(1).max(7)).max(7),
  note: text,
})
export type WaitInput = z.infer<typeof waitInput>

/** Who fits now; with the job whose place came free, how well that is used. */
export const fitsInput = z.object({ freedJobId: id.optional() })
export const freedInput = z.object({ freedJobId: id })
export type FitsInput = z.infer<typeof fitsInput>

/** Asked: the place is held for them, or they are told of one that is held for another already. */
export const askInput = oneRow
export type AskInput = z.infer<typeof askInput>

export const answerInput = oneRow.extend({ answer: z.enum(['yes', 'no']) })
export type AnswerInput = z.infer<typeof answerInput>
