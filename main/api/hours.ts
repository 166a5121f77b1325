import { z } from 'zod'
import { accepted, edited, oneRow, text, wallSpan } from '../services/desk/inputs.ts'
import { listExceptions, removeException, saveException } from '../services/setUp/hours.ts'
import { procedure, router } from './trpc.ts'

export const hours = router({
  /** The dates whose hours differ from their weekday's. */
  exceptions: procedure.query(({ ctx }) => listExceptions(ctx)),

  saveException: procedure
    .input(z.object({ ...edited, date: text, hours: z.array(wallSpan).max(10), note: text, accepted }))
    .mutation(({ ctx, input }) => saveException(ctx, input)),

  removeException: procedure
    .input(oneRow.extend({ accepted }))
    .mutation(({ ctx, input }) => removeException(ctx, input)),
})
