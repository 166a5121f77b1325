import { listInput, oneRow, orderInput } from '../services/desk/inputs.ts'
import { removeClosure, saveClosure } from '../services/setUp/bayClosures.ts'
import { archiveBay, listBays, orderBays, restoreBay, saveBay } from '../services/setUp/bays.ts'
import { bayInput, closureInput } from '../services/setUp/inputs.ts'
import { procedure, router } from './trpc.ts'

export const bays = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listBays(ctx, input)),
  save: procedure.input(bayInput).mutation(({ ctx, input }) => saveBay(ctx, input)),
  archive: procedure.input(oneRow).mutation(({ ctx, input }) => archiveBay(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreBay(ctx, input)),
  order: procedure.input(orderInput).mutation(({ ctx, input }) => orderBays(ctx, input)),
  saveClosure: procedure.input(closureInput).mutation(({ ctx, input }) => saveClosure(ctx, input)),
  removeClosure: procedure.input(oneRow).mutation(({ ctx, input }) => removeClosure(ctx, input)),
})
