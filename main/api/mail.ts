import { z } from 'zod'
import { mailInput, text } from '../services/desk/inputs.ts'
import { getMailSettings, saveMailSettings, tryMail } from '../services/desk/mailSettings.ts'
import { procedure, router } from './trpc.ts'

export const mail = router({
  get: procedure.query(({ ctx }) => getMailSettings(ctx)),

  save: procedure.input(mailInput).mutation(({ ctx, input }) => saveMailSettings(ctx, input)),

  /** Sends a letter to try the settings. */
  test: procedure.input(z.object({ to: text })).mutation(({ ctx, input }) => tryMail(ctx, input)),
})
