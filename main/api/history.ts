import { historyChoices, history as list } from '../services/history/history.ts'
import { historyInput } from '../services/history/inputs.ts'
import { takeBackInput } from '../services/undo/inputs.ts'
import { takeBack } from '../services/undo/takeBack.ts'
import { procedure, router } from './trpc.ts'

export const history = router({
  /** Who did what when, newest first, a page at a time. */
  list: procedure.input(historyInput).query(({ ctx, input }) => list(ctx, input)),
  /** Takes back one act, or the last of the desk that asks. */
  takeBack: procedure.input(takeBackInput).mutation(({ ctx, input }) => takeBack(ctx, input)),
  choices: procedure.query(({ ctx }) => historyChoices(ctx)),
})
