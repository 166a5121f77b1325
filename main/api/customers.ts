import { z } from 'zod'
import { id, oneRow } from '../services/desk/inputs.ts'
import { archiveCustomer, getCustomer, restoreCustomer, saveCustomer } from '../services/records/customers.ts'
import { findCustomers } from '../services/records/customersFind.ts'
import { customerInput, customersFound } from '../services/records/inputs.ts'
import { procedure, router } from './trpc.ts'

export const customers = router({
  /** By any part of a name, phone, address, plate or car; without text all, by name. */
  find: procedure.input(customersFound).query(({ ctx, input }) => findCustomers(ctx, input)),
  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getCustomer(ctx, input)),
  save: procedure.input(customerInput).mutation(({ ctx, input }) => saveCustomer(ctx, input)),
  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveCustomer(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreCustomer(ctx, input)),
})
