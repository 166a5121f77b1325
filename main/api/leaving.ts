import { rowAccepted } from '../services/desk/inputs.ts'
import { erasePerson } from '../services/leaving/erase.ts'
import {
  everythingStands,
  forgetEverything,
  packEverything,
  stopPacking,
} from '../services/leaving/everything.ts'
import { procedure, router } from './trpc.ts'

export const leaving = router({
  /** How the file of everything stands. */
  standing: procedure.query(({ ctx }) => everythingStands(ctx)),
  pack: procedure.mutation(({ ctx }) => packEverything(ctx)),
  stop: procedure.mutation(({ ctx }) => stopPacking(ctx.store)),
  forget: procedure.mutation(({ ctx }) => forgetEverything(ctx)),
  /** Takes one person out of every table. */
  erase: procedure.input(rowAccepted).mutation(({ ctx, input }) => erasePerson(ctx, input)),
})
