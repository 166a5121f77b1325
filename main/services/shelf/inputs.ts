/** Shapes of input that the areas of the shelf share. */
import { z } from 'zod'
import { sizeClasses } from '../../domain/shop/index.ts'
import { date, id, number, text, whole } from '../desk/inputs.ts'

export const amount = number('Give an amount, such as 12.5.')
export const moneyMinor = whole('Give an amount of money.', 1_000_000_000_000)
export const count = whole('Give a whole number.')
export const reason = z.string('Say why.').max(200)
export const weighed = z.object({ grossG: number('Give the weight in grams.') })

export const bottle = z.object({ productId: id, lotId: id })

/** What one part of a step's draw takes from which bottle. */
export const draw = z.object({
  productId: id,
  lotId: id.nullable(),
  amount: amount.optional(),
  how: z.enum(['proposed', 'corrected', 'weighed']),
  weighed: weighed.optional(),
  reason: reason.optional(),
  foundMore: z.boolean().optional(),
})

export const draws = z.array(draw).max(60)

export const receivedLine = z.object({
  productId: id,
  sizeId: id,
  containers: count,
  expiresOn: date.nullable(),
  batch: z.string().max(60).nullable(),
  costMinor: moneyMinor,
})

const recipeAmount = z.object({ amount, spread: number('Give the spread, 0 where there is none.') })

export const recipe = z.object({
  productId: id,
  bySize: z.record(z.enum(sizeClasses), recipeAmount),
})

export const priceBreaks = z
  .array(z.object({ fromPacks: count, packPriceMinor: moneyMinor }))
  .min(1, 'Give the price of one pack.')
  .max(20)

export const shelfFields = z.object({
  unit: z.enum(['ml', 'g', 'piece']),
  densityGPerMl: number('Give the density, such as 0.98.').nullable(),
  lifeAfterOpeningDays: count.nullable(),
  lifeUnlimited: z.boolean(),
  storageLeastC: number('Give a temperature.').nullable(),
  storageMostC: number('Give a temperature.').nullable(),
  place: text,
  serviceClass: z.enum(['vital', 'usual', 'handy']),
  holdsUpBookings: z.boolean(),
})
