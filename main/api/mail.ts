import { z } from 'zod'
import { text, version, whole } from '../services/desk/inputs.ts'
import { getMailSettings, saveMailSettings, tryMail } from '../services/desk/mailSettings.ts'
import { procedure, router } from './trpc.ts'

export const mail = router({
  get: procedure.query(({ ctx }) => getMailSettings(ctx)),

  save: procedure
    .input(
      z.object({
        host: text,
        port: whole('Give the port, such as 587.'),
        security: z.enum(['tls', 'starttls', 'none']),
        user: text.nullable(),
        password: z.string().max(500).nullable().optional(),
        fromName: text,
        fromAddress: text,
        version: version.optional(),
      }),
    )
    .mutation(({ ctx, input }) => saveMailSettings(ctx, input)),

  /** Sends a letter to try the settings. */
  test: procedure.input(z.object({ to: text })).mutation(({ ctx, input }) => tryMail(ctx, input)),
})
