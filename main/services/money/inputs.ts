/** What bills, invoices and payments are sent. */

import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { paymentMethods } from '../../domain/money/index.ts'
import { conditions, scopes } from '../../domain/shop/index.ts'
import { plan } from '../booking/inputs.ts'
import { date, id, oneRow, text } from '../desk/inputs.ts'
import { amountMinor, pricing } from '../prices/inputs.ts'

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
  taxReversed: z.boolean(),
})
export type BillInput = z.infer<typeof billInput>

/** Issues the invoice of a job; whom it is for stands on it as it is given here. */
export const issueInput = oneRow.extend({
  buyer: z.object({ name: text, address: text, country: text, email: text, taxNumber: text }),
  note: text,
  accepted: z.literal(true).optional(),
})
export type IssueInput = z.infer<typeof issueInput>

/** Gives back so much of each line. */
export const creditInput = z.object({
  id,
  lines: z.array(z.object({ id, amountMinor })).max(200),
  reason: text,
  /** What of the invoice had been credited when this was typed: nothing is given back twice. */
  seenCreditedMinor: amountMinor,
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

/** One to three ways to treat a car on file. */
export const quoteInput = z.object({
  vehicleId: id,
  condition: z.enum(conditions),
  scope: z.enum(scopes),
  note: text,
  variants: z
    .array(
      z.object({
        name: text,
        treatmentIds: z.array(id).min(1, word('Choose at least one treatment.')).max(20),
        ...pricing,
      }),
    )
    .min(1, word('Add a variant.'))
    .max(3, word('Three variants at most.')),
})
export type QuoteInput = z.infer<typeof quoteInput>

/** Which variant, who signs, and the signature as it was drawn, or that the typed name stands for it. */
export const acceptInput = oneRow.extend({
  position: z.int().min(0).max(2),
  name: text,
  signature: z.string().max(400_000, word('The signature is too large; clear it and sign again.')),
})
export type AcceptInput = z.infer<typeof acceptInput>

export const declineInput = oneRow
export type DeclineInput = z.infer<typeof declineInput>

/** The place it is booked at, as an offer gave it. */
export const bookQuoteInput = oneRow.extend({ plan })
export type BookQuoteInput = z.infer<typeof bookQuoteInput>
