import { historyChoices, history as list } from '../services/history/history.ts'
import { historyInput } from '../services/history/inputs.ts'
import { procedure, router } from './trpc.ts'

export const history = router({
  /** Who did what when, newest first, a page at a time. */
  list: procedure.input(historyInput).query(({ ctx, input }) => list(ctx, input)),
  choices: procedure.query(({ ctx }) => historyChoices(ctx)),
})
