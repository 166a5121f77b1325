import { z } from 'zod'
import { id, minute, text, versionOrNone } from '../services/desk/inputs.ts'
import { giveConsent, listConsents, saveReach, withdrawConsent } from '../services/reminders/consents.ts'
import { channel } from '../services/upkeep/inputs.ts'
import { procedure, router } from './trpc.ts'

export const consents = router({
  list: procedure.input(z.object({ customerId: id })).query(({ ctx, input }) => listConsents(ctx, input)),
  give: procedure
    .input(z.object({ customerId: id, channel, at: minute.optional(), source: text, wording: text }))
    .mutation(({ ctx, input }) => giveConsent(ctx, input)),
  /** Counts at once, also for what is written and waits. */
  withdraw: procedure
    .input(
      z.object({
        customerId: id,
        channel: z.union([channel, z.literal('all')]),
        source: text,
        wording: text,
        address: text.optional(),
      }),
    )
    .mutation(({ ctx, input }) => withdrawConsent(ctx, input)),
  /** Language, zone and postal address. */
  saveReach: procedure
    .input(
      z.object({
        customerId: id,
        language: text.nullable(),
        zone: text.nullable(),
        postal: text,
        version: versionOrNone,
      }),
    )
    .mutation(({ ctx, input }) => saveReach(ctx, input)),
})
