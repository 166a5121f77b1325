import { z } from 'zod'
import { id, oneRow } from '../services/desk/inputs.ts'
import { findAlike } from '../services/records/alike.ts'
import { removeContact, saveContact } from '../services/records/contacts.ts'
import { archiveCustomer, getCustomer, restoreCustomer, saveCustomer } from '../services/records/customers.ts'
import { findCustomers } from '../services/records/customersFind.ts'
import {
  alikeInput,
  contactInput,
  customerInput,
  customersFound,
  mergeInput,
} from '../services/records/inputs.ts'
import { mergeCustomers, undoMerge } from '../services/records/merge.ts'
import { procedure, router } from './trpc.ts'

export const customers = router({
  /** By any part of a name, phone, address, plate or car; without text all, by name. */
  find: procedure.input(customersFound).query(({ ctx, input }) => findCustomers(ctx, input)),
  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getCustomer(ctx, input)),
  save: procedure.input(customerInput).mutation(({ ctx, input }) => saveCustomer(ctx, input)),
  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveCustomer(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreCustomer(ctx, input)),

  /** Who is likely on file already, from what is typed so far. */
  alike: procedure.input(alikeInput).query(({ ctx, input }) => findAlike(ctx, input)),
  merge: procedure.input(mergeInput).mutation(({ ctx, input }) => mergeCustomers(ctx, input)),
  undoMerge: procedure.input(z.object({ id })).mutation(({ ctx, input }) => undoMerge(ctx, input)),
  saveContact: procedure.input(contactInput).mutation(({ ctx, input }) => saveContact(ctx, input)),
  removeContact: procedure.input(oneRow).mutation(({ ctx, input }) => removeContact(ctx, input)),
})
