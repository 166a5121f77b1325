import { z } from 'zod'
import { id } from '../services/desk/inputs.ts'
import { wasteRuleInput } from '../services/shelf/inputs.ts'
import { getSafety, saveSafety, uploadSheet } from '../services/shelf/safety.ts'
import { safetyInput, sheetInput } from '../services/shelf/safetyInputs.ts'
import { safetyWarnings } from '../services/shelf/safetyWarnings.ts'
import { saveWasteRule, wasteRules } from '../services/shelf/wasteRules.ts'
import { procedure, router } from './trpc.ts'

export const safety = router({
  get: procedure.input(z.object({ productId: id })).query(({ ctx, input }) => getSafety(ctx, input)),
  save: procedure.input(safetyInput).mutation(({ ctx, input }) => saveSafety(ctx, input)),
  uploadSheet: procedure.input(sheetInput).mutation(({ ctx, input }) => uploadSheet(ctx, input)),
  /** What is left after the work, with the shop's own rules. */
  waste: procedure.query(({ ctx }) => wasteRules(ctx)),
  saveWasteRule: procedure.input(wasteRuleInput).mutation(({ ctx, input }) => saveWasteRule(ctx, input)),
  warnings: procedure.query(({ ctx }) => safetyWarnings(ctx)),
})
