import { z } from 'zod'
import { edited, id, oneRow, text } from '../services/desk/inputs.ts'
import { archiveCustomer, getCustomer, restoreCustomer, saveCustomer } from '../services/records/customers.ts'
import { findCustomers } from '../services/records/customersFind.ts'
import { procedure, router } from './trpc.ts'

export const customers = router({
  /** By any part of a name, phone, address, plate or car; without text all, by name. */
  find: procedure
    .input(
      z.object({
        text: z.string().max(200),
        limit: z.int().min(1).max(1_000).optional(),
        archived: z.boolean().optional(),
      }),
    )
    .query(({ ctx, input }) => findCustomers(ctx, input)),

  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getCustomer(ctx, input)),

  save: procedure
    .input(
      z.object({
        ...edited,
        name: text,
        phone: text.nullable().optional(),
        email: text.nullable().optional(),
        note: text.optional(),
      }),
    )
    .mutation(({ ctx, input }) => saveCustomer(ctx, input)),

  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveCustomer(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreCustomer(ctx, input)),
})
