/** What the rules of money and the price of a visit are sent. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { taxCategories } from '../../domain/money/index.ts'
import { id, text, versionOrNone, whole } from '../desk/inputs.ts'

/** By what one of a list is named elsewhere; made by the screen. */
const key = z.string().min(1).max(64)
/** A decimal as it was typed. */
const decimal = z.string().max(20)
export const amountMinor = whole(word('Give an amount.'), 10_000_000_000)
const days = whole(word('Give a number of days.'), 3_660)

export const moneyRulesInput = z.object({
  taxInPrices: z.boolean(),
  taxes: z.array(z.object({ key, name: text, percent: decimal, category: z.enum(taxCategories) })).max(20),
  extras: z.array(z.object({ key, name: text, priceMinor: amountMinor, taxKey: text })).max(200),
  packages: z
    .array(z.object({ key, name: text, treatmentIds: z.array(id).max(20), percent: decimal }))
    .max(60),
  sharedOnce: z.boolean(),
  wornPercent: decimal,
  heavyPercent: decimal,
  depositPercent: decimal,
  cashStepMinor: whole(word('Give the smallest coin.'), 100_000),
  invoiceSeries: text,
  creditSeries: text,
  payWithinDays: days,
  quoteDays: days,
  labourMinor: amountMinor,
  taxNumber: text,
  payTo: text,
  noShowMinor: amountMinor,
  keptDayMinor: amountMinor,
  version: versionOrNone,
})
export type MoneyRules = z.infer<typeof moneyRulesInput>

/** What is sold beside the treatments, and what is taken off, as the desk says it. */
export const pricing = {
  extras: z
    .array(z.object({ key, quantity: decimal }))
    .max(50)
    .optional(),
  discounts: z
    .array(
      z.object({
        /** Null: off the whole. */
        treatmentId: id.nullable(),
        amountMinor: amountMinor.nullable(),
        percent: decimal.nullable(),
        reason: text,
      }),
    )
    .max(20)
    .optional(),
  /** The price of a treatment that has none for this size, as it was agreed. */
  agreed: z
    .array(z.object({ treatmentId: id, priceMinor: amountMinor }))
    .max(20)
    .optional(),
}
const pricingObject = z.object(pricing)
export type Pricing = z.infer<typeof pricingObject>
