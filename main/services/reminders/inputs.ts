/** What the reminder, consent, template and feed screens send. */
import { z } from 'zod'
import { date, id, language, minute, oneRow, text, versionOrNone } from '../desk/inputs.ts'
import { channel, visit, why } from '../upkeep/inputs.ts'

export const writeInput = visit.extend({ channel, templateId: id.optional() })
export type WriteInput = z.infer<typeof writeInput>

/** All drafts, or those named. */
export const approveInput = z.object({ ids: z.array(id).max(1_000).optional() }).optional()
export type ApproveInput = z.infer<typeof approveInput>

export const wordsInput = oneRow.extend({ subject: text, body: z.string().max(20_000) })
export type WordsInput = z.infer<typeof wordsInput>

export const refuseInput = oneRow.extend({ why })
export type RefuseInput = z.infer<typeof refuseInput>

export const outcomeInput = z.object({
  messageId: id,
  outcome: z.enum(['booked', 'later', 'no', 'unreachable', 'sold']),
  /** The day the owner named, for "later". */
  laterOn: date.optional(),
})
export type OutcomeInput = z.infer<typeof outcomeInput>

/** The times proposed are counted from 0. */
export const bookInput = z.object({ messageId: id, slot: z.int().min(0).max(9) })
export type BookInput = z.infer<typeof bookInput>

export const consentInput = z.object({
  customerId: id,
  channel,
  /** When it was said; now unless said otherwise. */
  at: minute.optional(),
  source: text,
  wording: text,
})
export type ConsentInput = z.infer<typeof consentInput>

export const withdrawalInput = z.object({
  customerId: id,
  channel: z.union([channel, z.literal('all')]),
  source: text,
  wording: text,
  /** The address it was said of, such as the one that replied "stop": it stops for everybody who has it. */
  address: text.optional(),
})
export type WithdrawalInput = z.infer<typeof withdrawalInput>

export const reachInput = z.object({
  customerId: id,
  language: text.nullable(),
  zone: text.nullable(),
  postal: text,
  /** ISO 3166-1; null: the shop's. */
  country: z.string().max(2).nullable().optional(),
  version: versionOrNone,
})
export type ReachInput = z.infer<typeof reachInput>

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

export const feedInput = z.object({ name: text, details: z.boolean() })
export type FeedInput = z.infer<typeof feedInput>
