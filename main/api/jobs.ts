import { oneRow } from '../services/desk/inputs.ts'
import { tickCheck } from '../services/job/checks.ts'
import { confirmCover } from '../services/job/cover.ts'
import {
  cancelInput,
  coverInput,
  finishStepInput,
  giveStepInput,
  handOverInput,
  jobSearch,
  lendInput,
  missedInput,
  noteInput,
  oneJob,
  oneJobSeen,
  outsideInput,
  promiseInput,
  sendWordsInput,
  spotAnswerInput,
  spotInput,
  startStepInput,
  stepMinutesInput,
  takeBackInput,
  tellInput,
  tickInput,
  timedAct,
} from '../services/job/inputs.ts'
import { cancelJob, handOver, promiseAgain } from '../services/job/jobActs.ts'
import { arrive, finishStep, reopenStep, startStep } from '../services/job/jobSteps.ts'
import { findJobsBy } from '../services/job/jobsFind.ts'
import { getJob } from '../services/job/jobView.ts'
import { lend } from '../services/job/lending.ts'
import { settleMissed } from '../services/job/missedWork.ts'
import { noteJob } from '../services/job/note.ts'
import { ownerWords, setOutside } from '../services/job/ownerWords.ts'
import { giveStep } from '../services/job/people.ts'
import { setStepMinutes } from '../services/job/stepMinutes.ts'
import { answerSpot, recordSpot, takeSpotBack } from '../services/job/testSpot.ts'
import { tellCustomer, toldCustomer } from '../services/job/toldCustomer.ts'
import { sendWords, sendWordsAgain } from '../services/reminders/sendWords.ts'
import { procedure, router } from './trpc.ts'

export const jobs = router({
  get: procedure.input(oneJob).query(({ ctx, input }) => getJob(ctx, input)),
  find: procedure.input(jobSearch).query(({ ctx, input }) => findJobsBy(ctx, input)),

  arrive: procedure.input(timedAct).mutation(({ ctx, input }) => arrive(ctx, input)),
  startStep: procedure.input(startStepInput).mutation(({ ctx, input }) => startStep(ctx, input)),
  finishStep: procedure.input(finishStepInput).mutation(({ ctx, input }) => finishStep(ctx, input)),
  reopenStep: procedure.input(takeBackInput).mutation(({ ctx, input }) => reopenStep(ctx, input)),

  stepMinutes: procedure.input(stepMinutesInput).mutation(({ ctx, input }) => setStepMinutes(ctx, input)),
  give: procedure.input(giveStepInput).mutation(({ ctx, input }) => giveStep(ctx, input)),

  missed: procedure.input(missedInput).mutation(({ ctx, input }) => settleMissed(ctx, input)),

  spot: procedure.input(spotInput).mutation(({ ctx, input }) => recordSpot(ctx, input)),
  spotAnswer: procedure.input(spotAnswerInput).mutation(({ ctx, input }) => answerSpot(ctx, input)),
  spotBack: procedure.input(oneJobSeen).mutation(({ ctx, input }) => takeSpotBack(ctx, input)),

  note: procedure.input(noteInput).mutation(({ ctx, input }) => noteJob(ctx, input)),
  handOver: procedure.input(handOverInput).mutation(({ ctx, input }) => handOver(ctx, input)),
  promise: procedure.input(promiseInput).mutation(({ ctx, input }) => promiseAgain(ctx, input)),
  told: procedure.input(oneJob).query(({ ctx, input }) => toldCustomer(ctx, input)),
  tell: procedure.input(tellInput).mutation(({ ctx, input }) => tellCustomer(ctx, input)),
  /** By e-mail, as the outbox comes to it. */
  sendWords: procedure.input(sendWordsInput).mutation(({ ctx, input }) => sendWords(ctx, input)),
  sendWordsAgain: procedure.input(oneRow).mutation(({ ctx, input }) => sendWordsAgain(ctx, input)),
  ownerWords: procedure.input(oneJob).query(({ ctx, input }) => ownerWords(ctx, input)),
  outside: procedure.input(outsideInput).mutation(({ ctx, input }) => setOutside(ctx, input)),
  cover: procedure.input(coverInput).mutation(({ ctx, input }) => confirmCover(ctx, input)),
  lend: procedure.input(lendInput).mutation(({ ctx, input }) => lend(ctx, input)),
  tick: procedure.input(tickInput).mutation(({ ctx, input }) => tickCheck(ctx, input)),
  cancel: procedure.input(cancelInput).mutation(({ ctx, input }) => cancelJob(ctx, input)),
})
