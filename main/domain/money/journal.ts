/** The shop's money as double entries: what is debited is credited, in every entry. */
import type { RateTotal } from './document.ts'
import { sumMinor } from './minor.ts'

export const paymentMethods = ['cash', 'card', 'transfer', 'other'] as const
export type PaymentMethod = (typeof paymentMethods)[number]

/** Where money is, or what it is for. */
export type Account = PaymentMethod | 'owed' | 'deposits' | 'sales' | 'tax' | 'tips' | 'rounding'

/** One side of an entry; a debit is above zero, a credit below. */
export interface Posting {
  readonly account: Account
  readonly amountMinor: number
  /** Of sales and tax: which rate. */
  readonly ratePercent?: string
}

/** An invoice: what is owed against sales and tax. The deposits paid before it stop being deposits. */
export function invoicePostings(of: { taxPerRate: readonly RateTotal[]; depositMinor: number }): Posting[] {
  return kept([
    {
      account: 'owed',
      amountMinor: sumMinor(of.taxPerRate.flatMap(rate => [rate.baseMinor, rate.taxMinor])),
    },
    ...of.taxPerRate.flatMap(({ ratePercent, baseMinor, taxMinor }): Posting[] => [
      { account: 'sales', amountMinor: -baseMinor, ratePercent },
      { account: 'tax', amountMinor: -taxMinor, ratePercent },
    ]),
    { account: 'deposits', amountMinor: of.depositMinor },
    { account: 'owed', amountMinor: -of.depositMinor },
  ])
}

/** A credit note: its invoice the other way round. */
export function creditPostings(taxPerRate: readonly RateTotal[]): Posting[] {
  return invoicePostings({ taxPerRate, depositMinor: 0 }).map(each => ({
    ...each,
    amountMinor: -each.amountMinor,
  }))
}

/** Money that came in, or went back where the amounts are below zero. */
export interface Paid {
  readonly method: PaymentMethod
  /** Toward what is owed. */
  readonly amountMinor: number
  /** For the crew on top of it. */
  readonly tipMinor: number
  /** What cash was rounded by: above zero where more was taken than owed. */
  readonly roundingMinor: number
  /** Before any invoice: it is a deposit. */
  readonly before: boolean
}

export function paymentPostings({ method, amountMinor, tipMinor, roundingMinor, before }: Paid): Posting[] {
  return kept([
    { account: method, amountMinor: sumMinor([amountMinor, tipMinor, roundingMinor]) },
    { account: before ? 'deposits' : 'owed', amountMinor: -amountMinor },
    { account: 'tips', amountMinor: -tipMinor },
    { account: 'rounding', amountMinor: -roundingMinor },
  ])
}

/** Postings of nothing are not written. */
function kept(postings: readonly Posting[]): Posting[] {
  return postings.filter(each => each.amountMinor !== 0)
}
