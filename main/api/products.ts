import { z } from 'zod'
import type { CureProfile } from '../domain/cure/index.ts'
import { figures } from '../domain/cure/index.ts'
import { productKinds } from '../domain/shop/index.ts'
import { accepted, edited, listInput, number, oneRow, text } from '../services/desk/inputs.ts'
import { archiveProduct, listProducts, restoreProduct, saveProduct } from '../services/setUp/products.ts'
import { procedure, router } from './trpc.ts'

const minutes = number('Give a duration, such as 12 h.')
const figure = number('Give a number.')

/** The shape of a cure profile; what its figures may be is the domain's to say. */
const cureProfile = z.object({
  tackFreeMin: minutes,
  recoat: z.object({ minMin: minutes, maxMin: minutes }).nullable(),
  topperMin: minutes,
  topperAdvisedMin: minutes,
  topperMaxMin: minutes.nullable(),
  handoverMin: minutes,
  handoverAdvisedMin: minutes,
  keepDryMin: minutes,
  firstWashMin: minutes,
  firstPeriod: z.object({ earlyMin: minutes, lateMin: minutes, degree: figure }),
  fullCure: z.object({ earlyMin: minutes, lateMin: minutes }),
  temperature: z.object({ minC: figure, maxC: figure }),
  humidity: z.object({ minPercent: figure, maxPercent: figure }),
  referenceC: figure,
  rate: z.discriminatedUnion('rule', [
    z.object({ rule: z.literal('arrhenius'), activationOverRK: figure }),
    z.object({ rule: z.literal('doubling') }),
    z.object({ rule: z.literal('linear'), datumC: figure }),
  ]),
  forcedCure: z
    .array(z.object({ panelC: figure, minutes: minutes, standsForMin: minutes }))
    .max(20)
    .readonly(),
  missedRecoat: text,
  sources: z.record(z.enum(figures), z.enum(['data sheet', 'common practice'])),
}) satisfies z.ZodType<CureProfile>

export const products = router({
  list: procedure.input(listInput).query(({ ctx, input }) => listProducts(ctx, input)),

  save: procedure
    .input(
      z.object({
        ...edited,
        name: text,
        kind: z.enum(productKinds),
        cureProfile: cureProfile.nullable(),
        accepted,
      }),
    )
    .mutation(({ ctx, input }) => saveProduct(ctx, input)),

  archive: procedure
    .input(oneRow.extend({ accepted }))
    .mutation(({ ctx, input }) => archiveProduct(ctx, input)),
  restore: procedure.input(oneRow).mutation(({ ctx, input }) => restoreProduct(ctx, input)),
})
