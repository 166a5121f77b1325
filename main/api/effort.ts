import { getEffort, saveEffort } from '../services/effort/effort.ts'
import { effortInput } from '../services/effort/inputs.ts'
import { procedure, router } from './trpc.ts'

export const effort = router({
  get: procedure.query(({ ctx }) => getEffort(ctx)),
  save: procedure.input(effortInput).mutation(({ ctx, input }) => saveEffort(ctx, input)),
})
