import { z } from 'zod'
import {
  accepted,
  edited,
  id,
  listInput,
  minute,
  oneRow,
  orderInput,
  skill,
  text,
  weekly,
} from '../services/desk/inputs.ts'
import { archiveCrew, listCrew, orderCrew, restoreCrew, saveCrew } from '../services/setUp/crew.ts'
import { removeAbsence, saveAbsence } from '../services/setUp/crewAbsences.ts'
import { procedure, router } from './trpc.ts'

export const crew = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listCrew(ctx, input)),

  save: procedure
    .input(
      z.object({
        ...edited,
        name: text,
        skills: z.array(skill).max(3),
        weekly: weekly.nullable(),
        accepted,
      }),
    )
    .mutation(({ ctx, input }) => saveCrew(ctx, input)),

  archive: procedure.input(oneRow.extend({ accepted })).mutation(({ ctx, input }) => archiveCrew(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreCrew(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderCrew(ctx, input)),

  saveAbsence: procedure
    .input(z.object({ ...edited, crewId: id, fromAt: minute, toAt: minute, reason: text, accepted }))
    .mutation(({ ctx, input }) => saveAbsence(ctx, input)),

  removeAbsence: procedure.input(oneRow).mutation(({ ctx, input }) => removeAbsence(ctx, input)),
})
