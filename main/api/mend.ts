import { mendInput, outInput } from '../services/mend/inputs.ts'
import { amiss, mendCars } from '../services/mend/mend.ts'
import { recordOut } from '../services/mend/record.ts'
import { procedure, router } from './trpc.ts'

/** The day goes otherwise: what happened is recorded, then what it touches is mended. */
export const mend = router({
  record: procedure.input(outInput).mutation(({ ctx, input }) => recordOut(ctx, input)),
  amiss: procedure.query(({ ctx }) => amiss(ctx)),
  take: procedure.input(mendInput).mutation(({ ctx, input }) => mendCars(ctx, input)),
})
