import { z } from 'zod'
import { createToken, revokeToken } from '../services/cure/sensors.ts'
import { id } from '../services/desk/inputs.ts'
import { procedure, router } from './trpc.ts'

export const sensors = router({
  /** Answers the token, this once. */
  createToken: procedure
    .input(z.object({ bayId: id, name: z.string().max(80) }))
    .mutation(({ ctx, input }) => createToken(ctx, input)),
  revoke: procedure.input(z.object({ id })).mutation(({ ctx, input }) => revokeToken(ctx, input)),
})
