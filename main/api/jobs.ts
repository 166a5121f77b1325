import { z } from 'zod'
import { id, minute, oneRow, position, text } from '../services/desk/inputs.ts'
import { cancelJob, handOver, promiseAgain } from '../services/job/jobActs.ts'
import { arrive, finishStep, reopenStep, startStep } from '../services/job/jobSteps.ts'
import { findJobsBy } from '../services/job/jobsFind.ts'
import { getJob } from '../services/job/jobView.ts'
import { draws } from '../services/shelf/inputs.ts'
import { procedure, router } from './trpc.ts'

const at = minute.optional()
const step = oneRow.extend({ position, at })

export const jobs = router({
  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getJob(ctx, input)),
  find: procedure
    .input(z.object({ text: z.string().max(200) }))
    .query(({ ctx, input }) => findJobsBy(ctx, input)),

  arrive: procedure.input(oneRow.extend({ at })).mutation(({ ctx, input }) => arrive(ctx, input)),
  /** With the reason, where a coat is begun outside what its profile asks. */
  startStep: procedure
    .input(step.extend({ reason: text.optional() }))
    .mutation(({ ctx, input }) => startStep(ctx, input)),
  /** With what it drew, where the crew says so at once; else that waits for the close of day. */
  finishStep: procedure
    .input(step.extend({ draws: draws.optional() }))
    .mutation(({ ctx, input }) => finishStep(ctx, input)),
  reopenStep: procedure
    .input(oneRow.extend({ position: position.optional() }))
    .mutation(({ ctx, input }) => reopenStep(ctx, input)),

  handOver: procedure
    .input(oneRow.extend({ at, reason: text.optional() }))
    .mutation(({ ctx, input }) => handOver(ctx, input)),
  promise: procedure
    .input(oneRow.extend({ promisedAt: minute }))
    .mutation(({ ctx, input }) => promiseAgain(ctx, input)),
  cancel: procedure
    .input(oneRow.extend({ reason: text }))
    .mutation(({ ctx, input }) => cancelJob(ctx, input)),
})
