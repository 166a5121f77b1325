import { z } from 'zod'
import { minute } from '../services/desk/inputs.ts'
import { previewInput, templateInput } from '../services/reminders/inputs.ts'
import { resultsSummary } from '../services/reminders/results.ts'
import { listTemplates, previewTemplate, saveTemplate } from '../services/reminders/templates.ts'
import { procedure, router } from './trpc.ts'

export const templates = router({
  list: procedure.query(({ ctx }) => listTemplates(ctx)),
  save: procedure.input(templateInput).mutation(({ ctx, input }) => saveTemplate(ctx, input)),
  /** The words with a real car's values in: a kept template's, or those being written. */
  preview: procedure.input(previewInput).query(({ ctx, input }) => previewTemplate(ctx, input)),
})

export const results = router({
  summary: procedure
    .input(z.object({ fromAt: minute.optional() }).optional())
    .query(({ ctx, input }) => resultsSummary(ctx, input)),
})
