import { shopOf } from '../services/desk/shopView.ts'
import { getFirstWeek } from '../services/setUp/firstWeek.ts'
import { papersInput, shopSetUp, shopUpdate } from '../services/setUp/inputs.ts'
import { getPapers, savePapers } from '../services/setUp/papers.ts'
import { getShop, promisesRead, updateShop } from '../services/setUp/shop.ts'
import { setUpShop } from '../services/setUp/shopSetUp.ts'
import { procedure, router } from './trpc.ts'

export const shop = router({
  /** The shop; null before the first run is done. */
  get: procedure.query(({ ctx }) => getShop(ctx)),

  /** The first run, all at once or not at all. */
  setUp: procedure.input(shopSetUp).mutation(({ ctx, input }) => setUpShop(ctx, input)),

  /** Fills an empty database with the invented shop. */
  openDemo: procedure.mutation(async ({ ctx }) => {
    // Not loaded unless asked for: it uses every room.
    const { fillDemo } = await import('../services/demo/index.ts')
    await fillDemo(ctx)
    return shopOf(ctx.store.read)
  }),

  /** What a new shop has still to enter; null once that is done or long past. */
  firstWeek: procedure.query(({ ctx }) => getFirstWeek(ctx)),

  promisesRead: procedure.mutation(({ ctx }) => promisesRead(ctx)),

  /** How the shop's papers look. */
  papers: procedure.query(({ ctx }) => getPapers(ctx)),
  savePapers: procedure.input(papersInput).mutation(({ ctx, input }) => savePapers(ctx, input)),

  update: procedure.input(shopUpdate).mutation(({ ctx, input }) => updateShop(ctx, input)),
})
