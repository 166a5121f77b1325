import { rowAccepted } from '../services/desk/inputs.ts'
import { listExceptions, removeException, saveException } from '../services/setUp/hours.ts'
import { exceptionInput } from '../services/setUp/inputs.ts'
import { procedure, router } from './trpc.ts'

export const hours = router({
  /** The dates whose hours differ from their weekday's. */
  exceptions: procedure.query(({ ctx }) => listExceptions(ctx)),
  saveException: procedure.input(exceptionInput).mutation(({ ctx, input }) => saveException(ctx, input)),
  removeException: procedure.input(rowAccepted).mutation(({ ctx, input }) => removeException(ctx, input)),
})
