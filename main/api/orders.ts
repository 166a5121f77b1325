import { z } from 'zod'
import { date, edited, id, oneRow, text } from '../services/desk/inputs.ts'
import { count, moneyMinor, reason } from '../services/shelf/inputs.ts'
import { cancelOrder, saveOrder } from '../services/shelf/orders/draft.ts'
import { draftMessage } from '../services/shelf/orders/letter.ts'
import { getOrder, listOrders } from '../services/shelf/orders/orderViews.ts'
import { proposeDrafts } from '../services/shelf/orders/propose.ts'
import { promiseOrder, receiveOrder } from '../services/shelf/orders/receive.ts'
import { chaseOrder, sendOrder } from '../services/shelf/orders/send.ts'
import { procedure, router } from './trpc.ts'

const why = z.array(z.string().max(600)).max(20)
const line = z.object({
  id: id.optional(),
  offerId: id.optional(),
  packs: count,
  packPriceMinor: moneyMinor.optional(),
  why: why.optional(),
})
const letter = { to: text.optional(), subject: text.optional(), text: z.string().max(20_000).optional() }

export const orders = router({
  list: procedure.query(({ ctx }) => listOrders(ctx)),
  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getOrder(ctx, input)),

  /** Drafts of what is advised today, or of these lines: one a supplier. */
  propose: procedure
    .input(
      z
        .object({
          lines: z
            .array(z.object({ offerId: id, packs: count, why: why.optional() }))
            .max(200)
            .optional(),
        })
        .optional(),
    )
    .mutation(({ ctx, input }) => proposeDrafts(ctx, input)),
  save: procedure
    .input(z.object({ ...edited, supplierId: id, note: text, lines: z.array(line).max(200) }))
    .mutation(({ ctx, input }) => saveOrder(ctx, input)),
  cancel: procedure.input(oneRow.extend({ reason })).mutation(({ ctx, input }) => cancelOrder(ctx, input)),

  /** The letter that would go with an order, or ask after it. */
  message: procedure
    .input(z.object({ id, kind: z.enum(['order', 'chase']) }))
    .query(({ ctx, input }) => draftMessage(ctx, input)),
  send: procedure
    .input(oneRow.extend({ how: z.enum(['email', 'paper']).default('email'), ...letter }))
    .mutation(({ ctx, input }) => sendOrder(ctx, input)),
  chase: procedure.input(oneRow.extend(letter)).mutation(({ ctx, input }) => chaseOrder(ctx, input)),

  receive: procedure
    .input(
      oneRow.extend({
        lines: z
          .array(
            z.object({
              lineId: id,
              containers: count,
              expiresOn: date.nullable(),
              batch: z.string().max(60).nullable(),
            }),
          )
          .max(200),
        complete: z.boolean().optional(),
      }),
    )
    .mutation(({ ctx, input }) => receiveOrder(ctx, input)),
  /** The supplier has named a day. */
  promise: procedure
    .input(oneRow.extend({ promisedOn: date }))
    .mutation(({ ctx, input }) => promiseOrder(ctx, input)),
})
