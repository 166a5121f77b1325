import { listInput, oneRow, orderInput } from '../services/desk/inputs.ts'
import { lendableInput } from '../services/setUp/inputs.ts'
import {
  archiveLendable,
  listLendables,
  orderLendables,
  restoreLendable,
  saveLendable,
} from '../services/setUp/lendables.ts'
import { procedure, router } from './trpc.ts'

export const lendables = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listLendables(ctx, input)),
  save: procedure.input(lendableInput).mutation(({ ctx, input }) => saveLendable(ctx, input)),
  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveLendable(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreLendable(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderLendables(ctx, input)),
})
