import { z } from 'zod'
import { id } from '../services/desk/inputs.ts'
import { giveConsent, listConsents, saveReach, withdrawConsent } from '../services/reminders/consents.ts'
import { consentInput, reachInput, withdrawalInput } from '../services/reminders/inputs.ts'
import { procedure, router } from './trpc.ts'

export const consents = router({
  list: procedure.input(z.object({ customerId: id })).query(({ ctx, input }) => listConsents(ctx, input)),
  give: procedure.input(consentInput).mutation(({ ctx, input }) => giveConsent(ctx, input)),
  /** Counts at once, also for what is written and waits. */
  withdraw: procedure.input(withdrawalInput).mutation(({ ctx, input }) => withdrawConsent(ctx, input)),
  /** Language, zone and postal address. */
  saveReach: procedure.input(reachInput).mutation(({ ctx, input }) => saveReach(ctx, input)),
})
