import { z } from 'zod'
import { date } from '../services/desk/inputs.ts'
import { morningSheet } from '../services/morning/morning.ts'
import { procedure, router } from './trpc.ts'

export const morning = router({
  sheet: procedure.input(z.object({ date })).query(({ ctx, input }) => morningSheet(ctx, input)),
})
