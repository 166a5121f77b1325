import { z } from 'zod'
import { date, edited, listInput, number, oneRow, text } from '../services/desk/inputs.ts'
import { count, moneyMinor } from '../services/shelf/inputs.ts'
import { archiveSupplier, listSuppliers, saveSupplier } from '../services/shelf/suppliers.ts'
import { procedure, router } from './trpc.ts'

const days = number('Give a number of working days.')

export const suppliers = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listSuppliers(ctx, input)),

  save: procedure
    .input(
      z.object({
        ...edited,
        name: text,
        email: text.nullable(),
        phone: text.nullable(),
        account: text,
        note: text,
        weekdays: z.array(z.int().min(1).max(7)).max(7),
        closedOn: z.array(date).max(200),
        cutoffMin: count.nullable(),
        leadMeanDays: days,
        leadSdDays: days,
        minimumOrderMinor: moneyMinor,
        carriageMinor: moneyMinor,
        freeCarriageFromMinor: moneyMinor.nullable(),
      }),
    )
    .mutation(({ ctx, input }) => saveSupplier(ctx, input)),

  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveSupplier(ctx, input)),
})
