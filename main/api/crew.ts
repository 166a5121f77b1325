import { listInput, oneRow, orderInput, rowAccepted } from '../services/desk/inputs.ts'
import { archiveCrew, listCrew, orderCrew, restoreCrew, saveCrew } from '../services/setUp/crew.ts'
import { removeAbsence, saveAbsence } from '../services/setUp/crewAbsences.ts'
import { absenceInput, crewInput } from '../services/setUp/inputs.ts'
import { procedure, router } from './trpc.ts'

export const crew = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listCrew(ctx, input)),
  save: procedure.input(crewInput).mutation(({ ctx, input }) => saveCrew(ctx, input)),
  archive: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveCrew(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreCrew(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderCrew(ctx, input)),
  saveAbsence: procedure.input(absenceInput).mutation(({ ctx, input }) => saveAbsence(ctx, input)),
  removeAbsence: procedure.input(oneRow).mutation(({ ctx, input }) => removeAbsence(ctx, input)),
})
