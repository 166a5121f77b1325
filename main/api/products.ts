import { listInput, oneRow, rowAccepted } from '../services/desk/inputs.ts'
import { productInput } from '../services/setUp/inputs.ts'
import { archiveProduct, listProducts, restoreProduct, saveProduct } from '../services/setUp/products.ts'
import { procedure, router } from './trpc.ts'

export const products = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listProducts(ctx, input)),
  save: procedure.input(productInput).mutation(({ ctx, input }) => saveProduct(ctx, input)),
  archive: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveProduct(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreProduct(ctx, input)),
})
