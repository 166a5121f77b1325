import { z } from 'zod'
import { sizeClasses, stages } from '../domain/shop/index.ts'
import {
  date,
  edited,
  id,
  number,
  oneRow,
  position,
  rowNumber,
  text,
  version,
  versionOrNone,
} from '../services/desk/inputs.ts'
import { closeOfDay } from '../services/shelf/closeOfDay.ts'
import { confirmDraws } from '../services/shelf/confirmDraws.ts'
import {
  amount,
  bottle,
  count,
  draws,
  moneyMinor,
  priceBreaks,
  reason,
  receivedLine,
  recipe,
  shelfFields,
  weighed,
} from '../services/shelf/inputs.ts'
import { ledgerPage, shelfList, shelfProduct } from '../services/shelf/productPage.ts'
import { receiveGoods } from '../services/shelf/receive.ts'
import { learnRecipe, saveRecipe, treatmentRecipes } from '../services/shelf/recipes.ts'
import { forgetCode, learnCode, scan } from '../services/shelf/scan.ts'
import { archiveSize, saveShelfProduct, saveSize } from '../services/shelf/shelfProducts.ts'
import { getRules, saveRules } from '../services/shelf/shelfRules.ts'
import {
  countBottle,
  openBottle,
  returnStock,
  takeStock,
  wasteStock,
} from '../services/shelf/stockChanges.ts'
import { archiveOffer, saveOffer } from '../services/shelf/supplierOffers.ts'
import { takeBackMove } from '../services/shelf/takeBack.ts'
import { jobCost, shelfValue } from '../services/shelf/value.ts'
import { procedure, router } from './trpc.ts'

const take = bottle.extend({ amount, reason })
const code = z.object({ code: z.string().min(1, 'Scan or type a code.').max(300) })
const share = number('Give a share, such as 0.95.')

export const shelf = router({
  list: procedure.query(({ ctx }) => shelfList(ctx)),
  product: procedure.input(z.object({ id })).query(({ ctx, input }) => shelfProduct(ctx, input)),
  /** A further page of a product's ledger. */
  ledger: procedure
    .input(z.object({ productId: id, before: rowNumber.nullable().optional() }))
    .query(({ ctx, input }) => ledgerPage(ctx, input)),
  /** What is on the shelf worth, and what jobs and waste cost. */
  value: procedure.query(({ ctx }) => shelfValue(ctx)),
  jobCost: procedure.input(z.object({ jobId: id })).query(({ ctx, input }) => jobCost(ctx, input)),

  /** The close of a day on one screen. */
  closeOfDay: procedure
    .input(z.object({ date: date.optional() }).optional())
    .query(({ ctx, input }) => closeOfDay(ctx, input)),
  /** What a finished step used, as confirmed, corrected or weighed. */
  confirmDraws: procedure
    .input(z.object({ jobId: id, position, version, draws }))
    .mutation(({ ctx, input }) => confirmDraws(ctx, input)),

  openLot: procedure.input(bottle).mutation(({ ctx, input }) => openBottle(ctx, input)),
  count: procedure
    .input(bottle.extend({ counted: amount.optional(), weighed: weighed.optional(), reason }))
    .mutation(({ ctx, input }) => countBottle(ctx, input)),
  waste: procedure.input(take).mutation(({ ctx, input }) => wasteStock(ctx, input)),
  /** Use that no booked step asks for. */
  use: procedure.input(take).mutation(({ ctx, input }) => takeStock(ctx, input)),
  returnToSupplier: procedure.input(take).mutation(({ ctx, input }) => returnStock(ctx, input)),
  /** Puts a move right by a correction that names it. */
  takeBack: procedure
    .input(z.object({ seq: rowNumber, reason }))
    .mutation(({ ctx, input }) => takeBackMove(ctx, input)),
  /** Goods that come in without an order. */
  receive: procedure
    .input(
      z.object({
        lines: z.array(receivedLine).max(100),
        supplierId: id.nullable().optional(),
        carriageMinor: moneyMinor.optional(),
      }),
    )
    .mutation(({ ctx, input }) => receiveGoods(ctx, input)),

  /** What a scanned or typed code stands for. */
  scan: procedure.input(code).query(({ ctx, input }) => scan(ctx, input)),
  learnCode: procedure
    .input(code.extend({ productId: id, sizeId: id.nullable().optional() }))
    .mutation(({ ctx, input }) => learnCode(ctx, input)),
  forgetCode: procedure.input(code).mutation(({ ctx, input }) => forgetCode(ctx, input)),

  /** How a product is counted; begins the counting where there is no record yet. */
  saveProduct: procedure
    .input(shelfFields.extend({ productId: id, version: version.optional() }))
    .mutation(({ ctx, input }) => saveShelfProduct(ctx, input)),
  saveSize: procedure
    .input(
      z.object({
        ...edited,
        productId: id,
        label: text,
        labelAmount: amount,
        measuredAmount: amount.nullable(),
        tareG: number('Give the weight in grams.').nullable(),
      }),
    )
    .mutation(({ ctx, input }) => saveSize(ctx, input)),
  archiveSize: procedure.input(oneRow).mutation(({ ctx, input }) => archiveSize(ctx, input)),
  /** A way to buy a product: from whom, in which size, at which prices. */
  saveOffer: procedure
    .input(
      z.object({
        ...edited,
        supplierId: id,
        productId: id,
        sizeId: id,
        article: text,
        containersPerPack: count,
        breaks: priceBreaks,
        shelfLifeDays: count.nullable(),
        preferred: z.boolean(),
      }),
    )
    .mutation(({ ctx, input }) => saveOffer(ctx, input)),
  archiveOffer: procedure.input(oneRow).mutation(({ ctx, input }) => archiveOffer(ctx, input)),

  recipes: procedure
    .input(z.object({ treatmentId: id }))
    .query(({ ctx, input }) => treatmentRecipes(ctx, input)),
  saveRecipe: procedure
    .input(z.object({ treatmentId: id, position, version, draws: z.array(recipe).max(30) }))
    .mutation(({ ctx, input }) => saveRecipe(ctx, input)),
  /** What steps really drew becomes the recipe. */
  useAsRecipe: procedure
    .input(
      z.object({
        stage: z.enum(stages),
        stepName: text,
        productId: id,
        sizeClass: z.enum(sizeClasses),
        amount,
        spread: amount,
      }),
    )
    .mutation(({ ctx, input }) => learnRecipe(ctx, input)),

  rules: procedure.query(({ ctx }) => getRules(ctx)),
  saveRules: procedure
    .input(
      z.object({
        services: z.object({ vital: share, usual: share, handy: share }),
        holdRatePerYear: share,
        lineCostMinor: moneyMinor,
        flammableLimitMl: count.nullable(),
        regime: z.enum(['un-ghs', 'eu-clp', 'us-osha']).nullable(),
        version: versionOrNone,
      }),
    )
    .mutation(({ ctx, input }) => saveRules(ctx, input)),
})
