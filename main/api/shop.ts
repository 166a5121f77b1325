import { z } from 'zod'
import { conditions, handoverRules, unitSystems } from '../domain/shop/index.ts'
import { fillDemo } from '../services/demo/index.ts'
import { getShop, updateShop } from '../services/setUp/shop.ts'
import { setUpShop } from '../services/setUp/shopSetUp.ts'
import { accepted, capability, skill, text, version, weekly } from './inputs.ts'
import { procedure, router } from './trpc.ts'

const basics = {
  name: text,
  zone: text,
  currency: text,
  units: z.enum(unitSystems),
  country: text,
  weekly,
}

export const shop = router({
  /** The shop; null before the first run is done. */
  get: procedure.query(({ ctx }) => getShop(ctx)),

  /** The first run, all at once or not at all. */
  setUp: procedure
    .input(
      z.object({
        ...basics,
        bays: z.array(z.object({ name: text, capabilities: z.array(capability) })).max(60),
        crew: z.array(z.object({ name: text, skills: z.array(skill) })).max(60),
        starters: z.boolean().default(true),
      }),
    )
    .mutation(({ ctx, input }) => setUpShop(ctx, input)),

  /** Fills an empty database with the invented shop. */
  openDemo: procedure.mutation(async ({ ctx }) => {
    await fillDemo(ctx)
    return (await getShop(ctx))!
  }),

  update: procedure
    .input(
      z.object({
        ...basics,
        gridMin: z.int(),
        handoverRule: z.enum(handoverRules),
        conditionFactors: z.record(z.enum(conditions), z.number()),
        phone: text.nullable(),
        email: text.nullable(),
        address: text.nullable(),
        version,
        accepted,
      }),
    )
    .mutation(({ ctx, input }) => updateShop(ctx, input)),
})
