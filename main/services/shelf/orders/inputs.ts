/** What is sent about orders to suppliers. */
import { z } from 'zod'
import { date, edited, id, oneRow, text } from '../../desk/inputs.ts'
import { batch, count, moneyMinor, reason } from '../inputs.ts'

const why = z.array(z.string().max(600)).max(20).optional()
const lines = <Line extends z.ZodType>(line: Line) => z.array(line).max(200)

/** A line as it is wished: a new one by the offer it is bought by, one that is there by its id. */
const line = z.object({
  id: id.optional(),
  offerId: id.optional(),
  packs: count,
  /** Left out: by the supplier's price list. */
  packPriceMinor: moneyMinor.optional(),
  why,
})
export type LineInput = z.infer<typeof line>

/** All lines of the draft; one that is left out is dropped. */
export const orderInput = z.object({ ...edited, supplierId: id, note: text, lines: lines(line) })
export type OrderInput = z.infer<typeof orderInput>

const wantedLine = z.object({ offerId: id, packs: count, why })
export type WantedLine = z.infer<typeof wantedLine>

/** What to order; left out: what is advised today. */
export const proposeInput = z.object({ lines: lines(wantedLine).optional() }).optional()
export type ProposeInput = z.infer<typeof proposeInput>

/** What is proposed, and the drafts that are there. */
export const sendAllInput = z.object({ lines: lines(wantedLine), drafts: lines(oneRow) })
export type SendAllInput = z.infer<typeof sendAllInput>

export const cancelInput = oneRow.extend({ reason })
export type CancelInput = z.infer<typeof cancelInput>

export const messageInput = z.object({ id, kind: z.enum(['order', 'chase']) })

/** Left out: the supplier's address and the usual letter. */
export const chaseInput = oneRow.extend({
  to: text.optional(),
  subject: text.optional(),
  text: z.string().max(20_000).optional(),
})
export type ChaseInput = z.infer<typeof chaseInput>

/** `paper`: it was given over another way (printed, telephoned, typed into the supplier's own shop). */
export const sendInput = chaseInput.extend({ how: z.enum(['email', 'paper']).default('email') })
export type SendInput = z.infer<typeof sendInput>

export const receiveOrderInput = oneRow.extend({
  lines: lines(z.object({ lineId: id, containers: count, expiresOn: date.nullable(), batch })),
  /** What is missing will not come any more. */
  complete: z.boolean().optional(),
})
export type ReceiveOrderInput = z.infer<typeof receiveOrderInput>

export const promiseInput = oneRow.extend({ promisedOn: date })
export type PromiseInput = z.infer<typeof promiseInput>
