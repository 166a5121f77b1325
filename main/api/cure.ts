import { z } from 'zod'
import { correctionInput, draftInput, signInput, verifyInput } from '../services/applied/inputs.ts'
import { correctRecord, getApplied, saveDraft, signRecord } from '../services/applied/record.ts'
import { verifyCertificate } from '../services/applied/verify.ts'
import { id } from '../services/desk/inputs.ts'
import { addHeating, voidHeating } from '../services/job/heatings.ts'
import { heatingInput, oneHeating, oneJob } from '../services/job/inputs.ts'
import { jobCure } from '../services/job/jobCure.ts'
import { takeNotices } from '../services/job/notices.ts'
import { procedure, router } from './trpc.ts'

export const cure = router({
  /** Layers, conditions, heated cures, and what to do where the promise slips. */
  job: procedure.input(oneJob).query(({ ctx, input }) => jobCure(ctx, input)),
  addHeating: procedure.input(heatingInput).mutation(({ ctx, input }) => addHeating(ctx, input)),
  voidHeating: procedure.input(oneHeating).mutation(({ ctx, input }) => voidHeating(ctx, input)),
  /** What fell due since the desk was last told; each is answered once. */
  takeNotices: procedure.mutation(({ ctx }) => takeNotices(ctx)),
})

/** What went on a car: drafted, signed, and corrected by pages that point back. */
export const applied = router({
  /** Whether a certificate and the record agree; a question, whatever its length. */
  verify: procedure.input(verifyInput).mutation(({ ctx, input }) => verifyCertificate(ctx, input)),

  get: procedure.input(z.object({ jobId: id })).query(({ ctx, input }) => getApplied(ctx, input)),
  save: procedure.input(draftInput).mutation(({ ctx, input }) => saveDraft(ctx, input)),
  sign: procedure.input(signInput).mutation(({ ctx, input }) => signRecord(ctx, input)),
  correct: procedure.input(correctionInput).mutation(({ ctx, input }) => correctRecord(ctx, input)),
})
