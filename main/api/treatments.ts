import { z } from 'zod'
import { sizeClasses, stages } from '../domain/shop/index.ts'
import {
  accepted,
  capability,
  edited,
  id,
  listInput,
  number,
  oneRow,
  orderInput,
  skill,
  text,
} from '../services/desk/inputs.ts'
import {
  archiveTreatment,
  listTreatments,
  orderTreatments,
  restoreTreatment,
  saveTreatment,
} from '../services/setUp/treatments.ts'
import { procedure, router } from './trpc.ts'

const sizes = z.enum(sizeClasses)
const minutes = number('Give a duration, such as 1 h 30.')

const step = z.object({
  name: text,
  stage: z.enum(stages),
  needs: capability,
  skill: skill.nullable(),
  crew: number('Give how many people.'),
  splittable: z.boolean(),
  sameBay: z.boolean(),
  waitMin: minutes.nullable(),
  waitMax: minutes.nullable(),
  minutes: z.record(sizes, minutes),
  byCondition: z.boolean(),
  productId: id.nullable(),
})

export const treatments = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listTreatments(ctx, input)),

  save: procedure
    .input(
      z.object({
        ...edited,
        name: text,
        summary: text,
        prices: z.record(sizes, number('Give an amount.', 1_000_000_000_000)),
        steps: z.array(step).max(40),
      }),
    )
    .mutation(({ ctx, input }) => saveTreatment(ctx, input)),

  archive: procedure
    .input(oneRow.extend({ accepted }))
    .mutation(({ ctx, input }) => archiveTreatment(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreTreatment(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderTreatments(ctx, input)),
})
