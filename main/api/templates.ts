import { z } from 'zod'
import { id, language, minute, text, versionOrNone } from '../services/desk/inputs.ts'
import { resultsSummary } from '../services/reminders/results.ts'
import { listTemplates, previewTemplate, saveTemplate } from '../services/reminders/templates.ts'
import { channel } from '../services/upkeep/inputs.ts'
import { procedure, router } from './trpc.ts'

const words = z.object({ subject: z.string().max(400), body: z.string().max(20_000) })

export const templates = router({
  list: procedure.query(({ ctx }) => listTemplates(ctx)),
  save: procedure
    .input(
      z.object({
        id: id.optional(),
        name: text,
        channel,
        words: z.record(z.string().max(20), words),
        version: versionOrNone,
      }),
    )
    .mutation(({ ctx, input }) => saveTemplate(ctx, input)),
  /** The words with a real car's values in: a kept template's, or those being written. */
  preview: procedure
    .input(
      z.object({
        templateId: id.optional(),
        words: words.optional(),
        vehicleId: id,
        language: language.optional(),
      }),
    )
    .query(({ ctx, input }) => previewTemplate(ctx, input)),
})

export const results = router({
  summary: procedure
    .input(z.object({ fromAt: minute.optional() }).optional())
    .query(({ ctx, input }) => resultsSummary(ctx, input)),
})
