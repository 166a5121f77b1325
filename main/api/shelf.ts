import { z } from 'zod'
import { date, id, oneRow, rowAccepted, rowNumber } from '../services/desk/inputs.ts'
import { closeOfDay } from '../services/shelf/closeOfDay.ts'
import { confirmDraws } from '../services/shelf/confirmDraws.ts'
import { confirmPlanned } from '../services/shelf/confirmPlanned.ts'
import { removeDilution, saveDilution } from '../services/shelf/dilutions.ts'
import {
  bottleInput,
  codeInput,
  confirmInput,
  confirmPlannedInput,
  countInput,
  dilutionInput,
  dilutionSeen,
  gradesInput,
  keepLifeInput,
  learnCodeInput,
  learnedInput,
  mixInput,
  offerInput,
  receiveInput,
  recipeInput,
  rulesInput,
  setActInput,
  shelfProductInput,
  shortenLifeInput,
  sizeInput,
  startSetInput,
  takeBackInput,
  takeInput,
  wasteInput,
} from '../services/shelf/inputs.ts'
import { mixBatch } from '../services/shelf/mixBatch.ts'
import { keepLife, shortenLife } from '../services/shelf/openedLife.ts'
import { ledgerPage, shelfList, shelfProduct } from '../services/shelf/productPage.ts'
import { receiveGoods } from '../services/shelf/receive.ts'
import { learnRecipe, saveRecipe, treatmentRecipes } from '../services/shelf/recipes.ts'
import { changeSet, saveGrades, startSet } from '../services/shelf/reusables.ts'
import { forgetCode, learnCode, scan } from '../services/shelf/scan.ts'
import { archiveSize, restoreSize, saveShelfProduct, saveSize } from '../services/shelf/shelfProducts.ts'
import { getRules, saveRules } from '../services/shelf/shelfRules.ts'
import {
  countBottle,
  openBottle,
  returnStock,
  takeStock,
  wasteStock,
} from '../services/shelf/stockChanges.ts'
import { archiveOffer, restoreOffer, saveOffer } from '../services/shelf/supplierOffers.ts'
import { takeBackMove } from '../services/shelf/takeBack.ts'
import { jobCost, shelfValue } from '../services/shelf/value.ts'
import { procedure, router } from './trpc.ts'

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
  confirmDraws: procedure.input(confirmInput).mutation(({ ctx, input }) => confirmDraws(ctx, input)),
  /** Finished steps that used what their recipes say, all at once. */
  confirmPlanned: procedure
    .input(confirmPlannedInput)
    .mutation(({ ctx, input }) => confirmPlanned(ctx, input)),

  openLot: procedure.input(bottleInput).mutation(({ ctx, input }) => openBottle(ctx, input)),
  count: procedure.input(countInput).mutation(({ ctx, input }) => countBottle(ctx, input)),
  waste: procedure.input(wasteInput).mutation(({ ctx, input }) => wasteStock(ctx, input)),
  /** Use that no booked step asks for. */
  use: procedure.input(takeInput).mutation(({ ctx, input }) => takeStock(ctx, input)),
  returnToSupplier: procedure.input(takeInput).mutation(({ ctx, input }) => returnStock(ctx, input)),
  /** Puts a move right by a correction that names it. */
  takeBack: procedure.input(takeBackInput).mutation(({ ctx, input }) => takeBackMove(ctx, input)),
  /** Goods that come in without an order. */
  receive: procedure.input(receiveInput).mutation(({ ctx, input }) => receiveGoods(ctx, input)),

  /** What a scanned or typed code stands for. */
  scan: procedure.input(codeInput).query(({ ctx, input }) => scan(ctx, input)),
  learnCode: procedure.input(learnCodeInput).mutation(({ ctx, input }) => learnCode(ctx, input)),
  forgetCode: procedure.input(codeInput).mutation(({ ctx, input }) => forgetCode(ctx, input)),

  /** How a product is counted; begins the counting where there is no record yet. */
  saveProduct: procedure.input(shelfProductInput).mutation(({ ctx, input }) => saveShelfProduct(ctx, input)),
  saveDilution: procedure.input(dilutionInput).mutation(({ ctx, input }) => saveDilution(ctx, input)),
  removeDilution: procedure.input(dilutionSeen).mutation(({ ctx, input }) => removeDilution(ctx, input)),
  /** A batch of a product made from a concentrate. */
  mix: procedure.input(mixInput).mutation(({ ctx, input }) => mixBatch(ctx, input)),
  /** Pieces that are washed and used again. */
  saveGrades: procedure.input(gradesInput).mutation(({ ctx, input }) => saveGrades(ctx, input)),
  startSet: procedure.input(startSetInput).mutation(({ ctx, input }) => startSet(ctx, input)),
  changeSet: procedure.input(setActInput).mutation(({ ctx, input }) => changeSet(ctx, input)),
  /** Takes the shorter life that bottles gone off suggest. */
  keepLife: procedure.input(keepLifeInput).mutation(({ ctx, input }) => keepLife(ctx, input)),
  shortenLife: procedure.input(shortenLifeInput).mutation(({ ctx, input }) => shortenLife(ctx, input)),
  saveSize: procedure.input(sizeInput).mutation(({ ctx, input }) => saveSize(ctx, input)),
  archiveSize: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveSize(ctx, input)),
  restoreSize: procedure.input(oneRow).mutation(({ ctx, input }) => restoreSize(ctx, input)),
  saveOffer: procedure.input(offerInput).mutation(({ ctx, input }) => saveOffer(ctx, input)),
  archiveOffer: procedure.input(rowAccepted).mutation(({ ctx, input }) => archiveOffer(ctx, input)),
  restoreOffer: procedure.input(oneRow).mutation(({ ctx, input }) => restoreOffer(ctx, input)),

  recipes: procedure
    .input(z.object({ treatmentId: id }))
    .query(({ ctx, input }) => treatmentRecipes(ctx, input)),
  saveRecipe: procedure.input(recipeInput).mutation(({ ctx, input }) => saveRecipe(ctx, input)),
  /** What steps really drew becomes the recipe. */
  useAsRecipe: procedure.input(learnedInput).mutation(({ ctx, input }) => learnRecipe(ctx, input)),

  rules: procedure.query(({ ctx }) => getRules(ctx)),
  saveRules: procedure.input(rulesInput).mutation(({ ctx, input }) => saveRules(ctx, input)),
})
