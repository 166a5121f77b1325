import { listInput, oneRow, rowAccepted } from '../services/desk/inputs.ts'
import { supplierInput } from '../services/shelf/inputs.ts'
import { archiveSupplier, listSuppliers, restoreSupplier, saveSupplier } from '../services/shelf/suppliers.ts'
import { procedure, router } from './trpc.ts'

export const suppliers = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listSuppliers(ctx, input)),
  save: procedure.input(supplierInput).mutation(({ ctx, input }) => saveSupplier(ctx, input)),
  archive: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveSupplier(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreSupplier(ctx, input)),
})
