import { listInput, oneRow, orderInput, rowAccepted } from '../services/desk/inputs.ts'
import { treatmentInput } from '../services/setUp/inputs.ts'
import {
  archiveTreatment,
  listTreatments,
  orderTreatments,
  restoreTreatment,
  saveTreatment,
} from '../services/setUp/treatments.ts'
import { procedure, router } from './trpc.ts'

export const treatments = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listTreatments(ctx, input)),
  save: procedure.input(treatmentInput).mutation(({ ctx, input }) => saveTreatment(ctx, input)),
  archive: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveTreatment(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreTreatment(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderTreatments(ctx, input)),
})
