import { z } from 'zod'
import { date, id, minute } from '../desk/inputs.ts'

const shortWord = z.string().min(1).max(200)

/** Which lines: all, or those that fit everything given. Days are the shop's, both counted in. */
export const historyFilter = z.object({
  entities: z.array(shortWord).min(1).max(8).optional(),
  entityId: z.string().min(1).max(320).optional(),
  who: shortWord.optional(),
  act: shortWord.optional(),
  fromDate: date.optional(),
  toDate: date.optional(),
})
export type HistoryFilter = z.infer<typeof historyFilter>

export const historyInput = historyFilter.extend({
  /** The last line of the page before. */
  cursor: z.object({ at: minute, id }).nullish(),
  limit: z.int().min(1).max(200).optional(),
})
export type HistoryInput = z.infer<typeof historyInput>
