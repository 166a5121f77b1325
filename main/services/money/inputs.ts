/** What bills, invoices and payments are sent. */
import { z } from 'zod'
import { paymentMethods } from '../../domain/money/index.ts'
import { date, id, oneRow, text } from '../desk/inputs.ts'
import { amountMinor } from '../prices/inputs.ts'

export const oneOf = z.object({ id })

/** What a job costs, all of it anew: prices by the row sold, and what comes on top or off. */
export const billInput = oneRow.extend({
  prices: z.array(z.object({ id, priceMinor: amountMinor })).max(40),
  charges: z
    .array(
      z.object({
        kind: z.enum(['extra', 'shared', 'package', 'discount']),
        treatmentId: id.nullable(),
        words: text,
        quantity: z.string().max(20),
        amountMinor,
        taxKey: text,
      }),
    )
    .max(100),
  depositMinor: amountMinor,
  taxExempt: text,
})
export type BillInput = z.infer<typeof billInput>

/** Issues the invoice of a job; whom it is for stands on it as it is given here. */
export const issueInput = oneRow.extend({
  buyer: z.object({ name: text, address: text, country: text, email: text, taxNumber: text }),
  note: text,
})
export type IssueInput = z.infer<typeof issueInput>

/** Gives back so much of each line. */
export const creditInput = z.object({
  id,
  lines: z.array(z.object({ id, amountMinor })).max(200),
  reason: text,
})
export type CreditInput = z.infer<typeof creditInput>

export const paymentInput = z.object({
  /** The job. */
  id,
  method: z.enum(paymentMethods),
  /** Toward what is owed; below zero where it is paid back. */
  amountMinor,
  tipMinor: amountMinor,
  note: text,
  /** What the job had been paid when this was typed: another window's payment in between is not paid twice. */
  seenPaidMinor: amountMinor,
})
export type PaymentInput = z.infer<typeof paymentInput>

export const undoInput = z.object({ id, reason: text })
export type UndoInput = z.infer<typeof undoInput>

export const papersInput = z.object({ text: z.string().max(200) })
export const dayInput = z.object({ date })
export const journalInput = z.object({ fromDate: date, toDate: date })
export type JournalInput = z.infer<typeof journalInput>
