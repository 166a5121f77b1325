import { z } from 'zod'
import { date, edited, id, number, oneRow, text, versionOrNone, whole } from '../services/desk/inputs.ts'
import { carAway, carSold, doneVisit, moveVisit, skipVisit, undoAct } from '../services/upkeep/acts.ts'
import { acceptCarProposal, carUpkeep } from '../services/upkeep/car.ts'
import { saveExposure } from '../services/upkeep/exposure.ts'
import { choices, planKind, visit, why } from '../services/upkeep/inputs.ts'
import { inspect, recordLayer, voidInspection } from '../services/upkeep/inspect.ts'
import { archivePlan, getVisit, savePlan } from '../services/upkeep/plans.ts'
import { listProductLives, saveProductLife } from '../services/upkeep/productLives.ts'
import { dueVisits } from '../services/upkeep/visits.ts'
import { applySpread, previewSpread, upkeepYear } from '../services/upkeep/year.ts'
import { procedure, router } from './trpc.ts'

const anchor = z.discriminatedUnion('to', [
  z.object({ to: z.literal('date'), on: date }),
  z.object({ to: z.literal('last-done'), since: date, event: text }),
])

export const upkeep = router({
  due: procedure
    .input(
      z.object({
        fromDate: date,
        toDate: date,
        filter: z
          .object({
            text: z.string().max(200).optional(),
            kinds: z.array(planKind).max(10).optional(),
            states: z
              .array(z.enum(['later', 'soon', 'due', 'overdue']))
              .max(10)
              .optional(),
            reachable: z.boolean().optional(),
            unbooked: z.boolean().optional(),
            vehicleId: id.optional(),
          })
          .optional(),
      }),
    )
    .query(({ ctx, input }) => dueVisits(ctx, input)),
  visit: procedure.input(visit).query(({ ctx, input }) => getVisit(ctx, input)),

  /** The next 52 weeks: due, aimed at, room. */
  year: procedure.query(({ ctx }) => upkeepYear(ctx)),
  spread: router({
    preview: procedure.query(({ ctx }) => previewSpread(ctx)),
    carryOut: procedure.mutation(({ ctx }) => applySpread(ctx)),
  }),

  skip: procedure.input(visit.extend({ why })).mutation(({ ctx, input }) => skipVisit(ctx, input)),
  move: procedure.input(visit.extend({ to: date, why })).mutation(({ ctx, input }) => moveVisit(ctx, input)),
  done: procedure
    .input(z.object({ planId: id, ruleOn: date.optional(), on: date.optional() }))
    .mutation(({ ctx, input }) => doneVisit(ctx, input)),
  away: procedure
    .input(z.object({ vehicleId: id, from: date, to: date, why }))
    .mutation(({ ctx, input }) => carAway(ctx, input)),
  sold: procedure
    .input(z.object({ vehicleId: id, on: date.optional() }))
    .mutation(({ ctx, input }) => carSold(ctx, input)),
  /** Takes back an act as a whole, by the id it answered with. */
  undo: procedure.input(z.object({ actId: id })).mutation(({ ctx, input }) => undoAct(ctx, input)),

  car: procedure.input(z.object({ vehicleId: id })).query(({ ctx, input }) => carUpkeep(ctx, input)),
  inspect: procedure
    .input(z.object({ layerId: id, on: date.optional(), working: z.boolean(), note: text.optional() }))
    .mutation(({ ctx, input }) => inspect(ctx, input)),
  voidInspection: procedure.input(z.object({ id })).mutation(({ ctx, input }) => voidInspection(ctx, input)),
  /** What was laid before this program, or elsewhere. */
  recordLayer: procedure
    .input(z.object({ vehicleId: id, productId: id, laidOn: date }))
    .mutation(({ ctx, input }) => recordLayer(ctx, input)),
  exposure: router({
    save: procedure
      .input(z.object({ vehicleId: id, choices, version: versionOrNone }))
      .mutation(({ ctx, input }) => saveExposure(ctx, input)),
  }),
  acceptProposal: procedure
    .input(z.object({ planId: id, what: z.enum(['interval', 'next-visit']), toOn: date }))
    .mutation(({ ctx, input }) => acceptCarProposal(ctx, input)),

  savePlan: procedure
    .input(
      z.object({
        ...edited,
        vehicleId: id,
        kind: planKind,
        title: text,
        rule: z.string().max(500),
        anchor,
        earlyDays: whole('Give a number of days.'),
        lateDays: whole('Give a number of days.'),
      }),
    )
    .mutation(({ ctx, input }) => savePlan(ctx, input)),
  archivePlan: procedure.input(oneRow).mutation(({ ctx, input }) => archivePlan(ctx, input)),

  /** How long each product is taken to last before anything is seen of it. */
  products: procedure.query(({ ctx }) => listProductLives(ctx)),
  saveProduct: procedure
    .input(
      z.object({
        productId: id,
        intervalDays: number('Give a number of days.'),
        mark: z.enum(['data sheet', 'common practice', 'set by the shop']),
        shape: number('Give a number.'),
        ageSpread: number('Give a number.'),
        shapeSpread: number('Give a number.'),
        version: versionOrNone,
      }),
    )
    .mutation(({ ctx, input }) => saveProductLife(ctx, input)),
})
