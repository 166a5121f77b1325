/** What the shelf's screens send: products, bottles, deliveries, recipes, rules and suppliers. */

import { z } from 'zod'
import { WASTE_STREAMS } from '../../domain/hazard/index.ts'
import { word } from '../../domain/language/index.ts'
import { DISCARD_REASONS } from '../../domain/shelf/index.ts'
import { sizeClasses, stages } from '../../domain/shop/index.ts'
import {
  date,
  edited,
  id,
  number,
  position,
  rowNumber,
  sizeClass,
  text,
  version,
  versionOrNone,
  whole,
} from '../desk/inputs.ts'

const amount = number(word('Give an amount, such as 12.5.'))
export const moneyMinor = whole(word('Give an amount of money.'), 1_000_000_000_000)
export const count = whole(word('Give a whole number.'))
const grams = number(word('Give the weight in grams.'))
const degrees = number(word('Give a temperature.')).nullable()
const share = number(word('Give a share, such as 0.95.'))
export const reason = z.string(word('Say why.')).max(200)
export const batch = z.string().max(60).nullable()
const weighed = z.object({ grossG: grams })

export const bottleInput = z.object({ productId: id, lotId: id })
export type BottleInput = z.infer<typeof bottleInput>

/** What is in the bottle, in the product's unit; or its weight with the bottle. */
export const countInput = bottleInput.extend({
  counted: amount.optional(),
  weighed: weighed.optional(),
  reason,
})
export type CountInput = z.infer<typeof countInput>

export const takeInput = bottleInput.extend({ amount, reason })
export type TakeInput = z.infer<typeof takeInput>

/** What was the matter with it; the reason is a further word, which "other" needs. */
export const wasteInput = takeInput.extend({ discard: z.enum(DISCARD_REASONS) })
export type WasteInput = z.infer<typeof wasteInput>

/** How a product is made from a concentrate; the version is that of the share, 0 where there is none yet. */
export const dilutionInput = z.object({
  productId: id,
  concentrateId: id,
  waterParts: number(word('Give the parts of water to one of concentrate, such as 9.')),
  lifeDays: count,
  version: versionOrNone,
})
export type DilutionInput = z.infer<typeof dilutionInput>
export const dilutionSeen = z.object({ productId: id, version })
export type DilutionSeen = z.infer<typeof dilutionSeen>

/** How much of a ready-to-use product is made. */
export const mixInput = z.object({ productId: id, amount })
export type MixInput = z.infer<typeof mixInput>

/** The shop's rule for a stream of waste; version 0 where there is none yet. */
export const wasteRuleInput = z.object({
  stream: z.enum(WASTE_STREAMS),
  version: versionOrNone,
  rule: z.string().max(600, word('Six hundred characters at most: it is read beside the work.')),
})
export type WasteRuleInput = z.infer<typeof wasteRuleInput>

/** What pieces that are washed again are good for, the best first; version 0 where nothing was said yet. */
export const gradesInput = z.object({
  productId: id,
  version: versionOrNone,
  grades: z.array(z.object({ name: text, washes: count })).max(6, word('Six uses at most.')),
})
export type GradesInput = z.infer<typeof gradesInput>

export const startSetInput = z.object({ productId: id, name: text, amount: count })
export type StartSetInput = z.infer<typeof startSetInput>

/** The reason is asked for where a set is demoted or retired. */
export const setActInput = z.object({
  id,
  version,
  act: z.discriminatedUnion('kind', [
    z.object({ kind: z.enum(['washed', 'demoted']) }),
    z.object({ kind: z.literal('retired'), pieces: count }),
  ]),
  reason,
})
export type SetActInput = z.infer<typeof setActInput>

export const takeBackInput = z.object({ seq: rowNumber, reason })
export type TakeBackInput = z.infer<typeof takeBackInput>

/** What one part of a step's draw takes from which bottle. */
const draw = z.object({
  productId: id,
  /** The bottle it came from; null: the one next in line. */
  lotId: id.nullable(),
  /** In the product's unit; 0: none was used. Left out where the bottle was weighed. */
  amount: amount.optional(),
  how: z.enum(['proposed', 'corrected', 'weighed']),
  weighed: weighed.optional(),
  /** Why this bottle is taken out of turn. */
  reason: reason.optional(),
  /** Why a second batch of a coating goes onto one car. */
  mixing: reason.optional(),
  /** More was used than the shelf held by the ledger: record the rest as found. */
  foundMore: z.boolean().optional(),
})
export type DrawInput = z.infer<typeof draw>
export const draws = z.array(draw).max(60)

export const confirmInput = z.object({ jobId: id, position, version, draws })
export type ConfirmInput = z.infer<typeof confirmInput>

/** Finished steps that used what their recipes say. */
export const confirmPlannedInput = z.object({
  steps: z
    .array(z.object({ jobId: id, position, version }))
    .min(1)
    .max(200),
})
export type ConfirmPlannedInput = z.infer<typeof confirmPlannedInput>

const receivedLine = z.object({
  productId: id,
  sizeId: id,
  /** Bottles, cans, boxes: each becomes a lot of its own. */
  containers: count,
  /** The last day of use by the label; null: none printed. */
  expiresOn: date.nullable(),
  batch,
  /** What they cost together, without carriage; 0 for a sample. */
  costMinor: moneyMinor,
})

export const receiveInput = z.object({
  lines: z.array(receivedLine).max(100),
  supplierId: id.nullable().optional(),
  /** Shared among the lines by their value. */
  carriageMinor: moneyMinor.optional(),
})
export type ReceiveInput = z.infer<typeof receiveInput>

export const codeInput = z.object({ code: z.string().min(1, word('Scan or type a code.')).max(300) })
export const learnCodeInput = codeInput.extend({ productId: id, sizeId: id.nullable().optional() })
export type CodeInput = z.infer<typeof codeInput>
export type LearnCodeInput = z.infer<typeof learnCodeInput>

/** How a product is counted and kept. */
const shelfFields = z.object({
  unit: z.enum(['ml', 'g', 'piece']),
  densityGPerMl: number(word('Give the density, such as 0.98.')).nullable(),
  lifeAfterOpeningDays: count.nullable(),
  /** The maker says an opened container keeps; told apart from a maker who says nothing. */
  lifeUnlimited: z.boolean(),
  storageLeastC: degrees,
  storageMostC: degrees,
  place: text,
  serviceClass: z.enum(['vital', 'usual', 'handy']),
  /** A booking waits for it where it lacks. */
  holdsUpBookings: z.boolean(),
})
export type ShelfFields = z.infer<typeof shelfFields>

/** `vital`: no job without it; `usual`; `handy`: something else does for a day. Each has the owner's service level. */
export type ServiceClass = ShelfFields['serviceClass']

/** The version is that of the shelf's record; left out where counting begins. */
export const shelfProductInput = shelfFields.extend({ productId: id, version: version.optional() })
export type ShelfProductInput = z.infer<typeof shelfProductInput>

/** Version of the shelf's record; the days are those of the proposal that was seen. */
export const shortenLifeInput = z.object({ productId: id, version, days: count })
export type ShortenLifeInput = z.infer<typeof shortenLifeInput>

export const keepLifeInput = shortenLifeInput.omit({ days: true })
export type KeepLifeInput = z.infer<typeof keepLifeInput>

export const sizeInput = z.object({
  ...edited,
  productId: id,
  label: text,
  labelAmount: amount,
  measuredAmount: amount.nullable(),
  tareG: grams.nullable(),
})
export type SizeInput = z.infer<typeof sizeInput>

/** A way to buy a product: from whom, in which size, at which prices. */
export const offerInput = z.object({
  ...edited,
  supplierId: id,
  productId: id,
  sizeId: id,
  article: text,
  containersPerPack: count,
  breaks: z
    .array(z.object({ fromPacks: count, packPriceMinor: moneyMinor }))
    .min(1, word('Give the price of one pack.'))
    .max(20),
  shelfLifeDays: count.nullable(),
  preferred: z.boolean(),
})
export type OfferInput = z.infer<typeof offerInput>

const recipe = z.object({
  productId: id,
  bySize: z.record(
    z.enum(sizeClasses),
    z.object({ amount, spread: number(word('Give the spread, 0 where there is none.')) }),
  ),
})

/** Position and version are those of the step and of its treatment. */
export const recipeInput = z.object({ treatmentId: id, position, version, draws: z.array(recipe).max(30) })
export type RecipeInput = z.infer<typeof recipeInput>

export const learnedInput = z.object({
  stage: z.enum(stages),
  stepName: text,
  productId: id,
  sizeClass,
  amount,
  spread: amount,
})
export type LearnedInput = z.infer<typeof learnedInput>

export const rulesInput = z.object({
  services: z.object({ vital: share, usual: share, handy: share }),
  holdRatePerYear: share,
  lineCostMinor: moneyMinor,
  flammableLimitMl: count.nullable(),
  regime: z.enum(['un-ghs', 'eu-clp', 'us-osha']).nullable(),
  version: versionOrNone,
})
export type RulesInput = z.infer<typeof rulesInput>

const workingDays = number(word('Give a number of working days.'))

export const supplierInput = z.object({
  ...edited,
  name: text,
  email: text.nullable(),
  phone: text.nullable(),
  account: text,
  note: text,
  weekdays: z.array(z.int().min(1).max(7)).max(7),
  closedOn: z.array(date).max(200),
  cutoffMin: count.nullable(),
  leadMeanDays: workingDays,
  leadSdDays: workingDays,
  minimumOrderMinor: moneyMinor,
  carriageMinor: moneyMinor,
  freeCarriageFromMinor: moneyMinor.nullable(),
})
export type SupplierInput = z.infer<typeof supplierInput>
