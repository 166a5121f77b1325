import { z } from 'zod'
import { id } from '../services/desk/inputs.ts'
import { safetyInput, sheetInput } from '../services/shelf/inputs.ts'
import { getSafety, saveSafety, uploadSheet } from '../services/shelf/safety.ts'
import { safetyWarnings } from '../services/shelf/safetyWarnings.ts'
import { procedure, router } from './trpc.ts'

export const safety = router({
  get: procedure.input(z.object({ productId: id })).query(({ ctx, input }) => getSafety(ctx, input)),
  save: procedure.input(safetyInput).mutation(({ ctx, input }) => saveSafety(ctx, input)),
  uploadSheet: procedure.input(sheetInput).mutation(({ ctx, input }) => uploadSheet(ctx, input)),
  warnings: procedure.query(({ ctx }) => safetyWarnings(ctx)),
})
