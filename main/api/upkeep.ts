import { z } from 'zod'
import { id, oneRow } from '../services/desk/inputs.ts'
import { carAway, carSold, doneVisit, moveVisit, skipVisit, undoAct } from '../services/upkeep/acts.ts'
import { acceptCarProposal, carUpkeep } from '../services/upkeep/car.ts'
import { dueVisits } from '../services/upkeep/dueVisits.ts'
import { saveExposure } from '../services/upkeep/exposure.ts'
import {
  awayInput,
  doneInput,
  dueInput,
  exposureInput,
  inspectInput,
  layerInput,
  moveInput,
  planInput,
  productLifeInput,
  proposalInput,
  skipInput,
  soldInput,
  visit,
} from '../services/upkeep/inputs.ts'
import { inspect, recordLayer, voidInspection } from '../services/upkeep/inspect.ts'
import { archivePlan, getVisit, savePlan } from '../services/upkeep/plans.ts'
import { listProductLives, saveProductLife } from '../services/upkeep/productLives.ts'
import { applySpread, beginSpread, spreadStands, stopSpread } from '../services/upkeep/spread.ts'
import { upkeepYear } from '../services/upkeep/year.ts'
import { procedure, router } from './trpc.ts'

export const upkeep = router({
  due: procedure.input(dueInput).query(({ ctx, input }) => dueVisits(ctx, input)),
  visit: procedure.input(visit).query(({ ctx, input }) => getVisit(ctx, input)),

  /** The next 52 weeks: due, aimed at, room. */
  year: procedure.query(({ ctx }) => upkeepYear(ctx)),
  spread: router({
    /** Begins to find a week for every visit, and answers at once; `preview` tells how far it is, then what it found. */
    begin: procedure.mutation(({ ctx }) => beginSpread(ctx)),
    stop: procedure.mutation(({ ctx }) => stopSpread(ctx)),
    preview: procedure.query(({ ctx }) => spreadStands(ctx)),
    carryOut: procedure.mutation(({ ctx }) => applySpread(ctx)),
  }),

  skip: procedure.input(skipInput).mutation(({ ctx, input }) => skipVisit(ctx, input)),
  move: procedure.input(moveInput).mutation(({ ctx, input }) => moveVisit(ctx, input)),
  done: procedure.input(doneInput).mutation(({ ctx, input }) => doneVisit(ctx, input)),
  away: procedure.input(awayInput).mutation(({ ctx, input }) => carAway(ctx, input)),
  sold: procedure.input(soldInput).mutation(({ ctx, input }) => carSold(ctx, input)),
  /** Takes back an act as a whole, by the id it answered with. */
  undo: procedure.input(z.object({ actId: id })).mutation(({ ctx, input }) => undoAct(ctx, input)),

  car: procedure.input(z.object({ vehicleId: id })).query(({ ctx, input }) => carUpkeep(ctx, input)),
  inspect: procedure.input(inspectInput).mutation(({ ctx, input }) => inspect(ctx, input)),
  voidInspection: procedure.input(z.object({ id })).mutation(({ ctx, input }) => voidInspection(ctx, input)),
  /** What was laid before this program, or elsewhere. */
  recordLayer: procedure.input(layerInput).mutation(({ ctx, input }) => recordLayer(ctx, input)),
  exposure: router({
    save: procedure.input(exposureInput).mutation(({ ctx, input }) => saveExposure(ctx, input)),
  }),
  acceptProposal: procedure.input(proposalInput).mutation(({ ctx, input }) => acceptCarProposal(ctx, input)),

  savePlan: procedure.input(planInput).mutation(({ ctx, input }) => savePlan(ctx, input)),
  archivePlan: procedure.input(oneRow).mutation(({ ctx, input }) => archivePlan(ctx, input)),

  /** How long each product is taken to last before anything is seen of it. */
  products: procedure.query(({ ctx }) => listProductLives(ctx)),
  saveProduct: procedure.input(productLifeInput).mutation(({ ctx, input }) => saveProductLife(ctx, input)),
})
