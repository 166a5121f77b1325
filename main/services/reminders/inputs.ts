/** What the reminder, consent and template screens send. */
import { z } from 'zod'
import { id, language, text, versionOrNone } from '../desk/inputs.ts'
import { channel } from '../upkeep/inputs.ts'

const words = z.object({ subject: z.string().max(400), body: z.string().max(20_000) })

export const templateInput = z.object({
  id: id.optional(),
  name: text,
  channel,
  /** By language tag. */
  words: z.record(z.string().max(20), words),
  version: versionOrNone,
})
export type TemplateInput = z.infer<typeof templateInput>

export const previewInput = z.object({
  /** A template that is kept, or the words being written. */
  templateId: id.optional(),
  words: words.optional(),
  vehicleId: id,
  language: language.optional(),
})
export type PreviewInput = z.infer<typeof previewInput>
