import { z } from 'zod'
import { id, oneRow } from '../services/desk/inputs.ts'
import { addWaiting, removeWaiting } from '../services/waiting/entries.ts'
import { freedMinutes } from '../services/waiting/freed.ts'
import { answerInput, askInput, fitsInput, freedInput, waitInput } from '../services/waiting/inputs.ts'
import { answerWaiting, askWaiting, waitingList, waitingWords } from '../services/waiting/waitingList.ts'
import { procedure, router } from './trpc.ts'

export const waiting = router({
  /** Everybody on the list, with where they fit now. */
  list: procedure.input(fitsInput).query(({ ctx, input }) => waitingList(ctx, input)),
  freed: procedure.input(freedInput).query(({ ctx, input }) => freedMinutes(ctx, input)),
  words: procedure.input(z.object({ id })).query(({ ctx, input }) => waitingWords(ctx, input)),
  add: procedure.input(waitInput).mutation(({ ctx, input }) => addWaiting(ctx, input)),
  remove: procedure.input(oneRow).mutation(({ ctx, input }) => removeWaiting(ctx, input)),
  ask: procedure.input(askInput).mutation(({ ctx, input }) => askWaiting(ctx, input)),
  answer: procedure.input(answerInput).mutation(({ ctx, input }) => answerWaiting(ctx, input)),
})
