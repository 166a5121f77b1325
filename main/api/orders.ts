import { z } from 'zod'
import { id } from '../services/desk/inputs.ts'
import { cancelOrder, saveOrder } from '../services/shelf/orders/draft.ts'
import {
  cancelInput,
  chaseInput,
  messageInput,
  orderInput,
  promiseInput,
  proposeInput,
  receiveOrderInput,
  sendAllInput,
  sendInput,
} from '../services/shelf/orders/inputs.ts'
import { draftMessage } from '../services/shelf/orders/letter.ts'
import { getOrder, listOrders } from '../services/shelf/orders/orderViews.ts'
import { proposeDrafts } from '../services/shelf/orders/propose.ts'
import { promiseOrder, receiveOrder } from '../services/shelf/orders/receive.ts'
import { chaseOrder, sendOrder } from '../services/shelf/orders/send.ts'
import { sendAll } from '../services/shelf/orders/sendAll.ts'
import { procedure, router } from './trpc.ts'

export const orders = router({
  list: procedure.query(({ ctx }) => listOrders(ctx)),
  get: procedure.input(z.object({ id })).query(({ ctx, input }) => getOrder(ctx, input)),
  /** Drafts of what is advised today, or of these lines: one a supplier. */
  propose: procedure.input(proposeInput).mutation(({ ctx, input }) => proposeDrafts(ctx, input)),
  save: procedure.input(orderInput).mutation(({ ctx, input }) => saveOrder(ctx, input)),
  cancel: procedure.input(cancelInput).mutation(({ ctx, input }) => cancelOrder(ctx, input)),
  /** The letter that would go with an order, or ask after it. */
  message: procedure.input(messageInput).query(({ ctx, input }) => draftMessage(ctx, input)),
  send: procedure.input(sendInput).mutation(({ ctx, input }) => sendOrder(ctx, input)),
  /** All of today's orders, by e-mail with their usual letters. */
  sendAll: procedure.input(sendAllInput).mutation(({ ctx, input }) => sendAll(ctx, input)),
  chase: procedure.input(chaseInput).mutation(({ ctx, input }) => chaseOrder(ctx, input)),
  receive: procedure.input(receiveOrderInput).mutation(({ ctx, input }) => receiveOrder(ctx, input)),
  /** The supplier has named a day. */
  promise: procedure.input(promiseInput).mutation(({ ctx, input }) => promiseOrder(ctx, input)),
})
