import { z } from 'zod'
import { edited, finish, id, number, oneRow, sizeClass, text } from '../services/desk/inputs.ts'
import { archiveVehicle, restoreVehicle, saveVehicle } from '../services/records/vehicles.ts'
import { procedure, router } from './trpc.ts'

export const vehicles = router({
  save: procedure
    .input(
      z.object({
        ...edited,
        customerId: id,
        plate: text,
        make: text.default(''),
        model: text.default(''),
        colour: text.default(''),
        year: number('Give the model year in four digits.').nullable().optional(),
        vin: text.nullable().optional(),
        sizeClass,
        finish,
        note: text.default(''),
      }),
    )
    .mutation(({ ctx, input }) => saveVehicle(ctx, input)),

  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveVehicle(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreVehicle(ctx, input)),
})
