import { z } from 'zod'
import { zoneFinishes } from '../services/applied/appliedViews.ts'
import { correctRecord, getApplied, saveDraft, signRecord } from '../services/applied/record.ts'
import { id, minute, number, position, text, version, versionOrNone } from '../services/desk/inputs.ts'
import { addHeating, voidHeating } from '../services/job/heatings.ts'
import { jobCure } from '../services/job/jobCure.ts'
import { takeNotices } from '../services/job/notices.ts'
import { procedure, router } from './trpc.ts'

const draft = z.object({
  note: text,
  layers: z
    .array(
      z.object({
        position,
        lot: z.string().max(200),
        who: z.string().max(200),
        zones: z.array(z.object({ name: z.string().min(1).max(80), finish: z.enum(zoneFinishes) })).max(100),
      }),
    )
    .max(50),
})
const signedBy = z.string().max(80)

export const cure = router({
  /** Layers, conditions, heated cures, and what to do where the promise slips. */
  job: procedure.input(z.object({ id })).query(({ ctx, input }) => jobCure(ctx, input)),
  addHeating: procedure
    .input(
      z.object({
        jobId: id,
        version,
        fromAt: minute,
        toAt: minute,
        panelC: number('Give a temperature, such as 60.'),
        note: text,
      }),
    )
    .mutation(({ ctx, input }) => addHeating(ctx, input)),
  voidHeating: procedure
    .input(z.object({ jobId: id, version, id }))
    .mutation(({ ctx, input }) => voidHeating(ctx, input)),
  /** What fell due since the desk was last told; each is answered once. */
  takeNotices: procedure.mutation(({ ctx }) => takeNotices(ctx)),
})

/** What went on a car: drafted, signed, and corrected by pages that point back. */
export const applied = router({
  get: procedure.input(z.object({ jobId: id })).query(({ ctx, input }) => getApplied(ctx, input)),
  save: procedure
    .input(z.object({ jobId: id, version: versionOrNone, draft }))
    .mutation(({ ctx, input }) => saveDraft(ctx, input)),
  sign: procedure
    .input(z.object({ jobId: id, version: versionOrNone, draft, signedBy }))
    .mutation(({ ctx, input }) => signRecord(ctx, input)),
  correct: procedure
    .input(z.object({ jobId: id, correctsId: id, draft, reason: text, signedBy }))
    .mutation(({ ctx, input }) => correctRecord(ctx, input)),
})
