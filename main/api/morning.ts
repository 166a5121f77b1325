import { z } from 'zod'
import { morningSheet } from '../services/morning/morning.ts'
import { procedure, router } from './trpc.ts'

export const morning = router({
  sheet: procedure
    .input(z.object({ date: z.string().max(10) }))
    .query(({ ctx, input }) => morningSheet(ctx, input)),
})
