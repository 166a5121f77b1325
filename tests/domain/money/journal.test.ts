import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chargeBill } from '../../../main/domain/money/bill.ts'
import {
  creditPostings,
  invoicePostings,
  paymentMethods,
  paymentPostings,
  sumMinor,
} from '../../../main/domain/money/index.ts'
import type { Posting } from '../../../main/domain/money/journal.ts'
import { bills } from './bills.ts'

const balance = (postings: readonly Posting[]) => sumMinor(postings.map(each => each.amountMinor))

test('Every entry balances, whatever was billed and paid', () => {
  const amount = fc.integer({ min: -1_000_000, max: 1_000_000 })
  fc.assert(
    fc.property(
      bills,
      amount,
      fc.record({
        method: fc.constantFrom(...paymentMethods),
        amountMinor: amount,
        tipMinor: amount,
        roundingMinor: amount,
        before: fc.boolean(),
      }),
      (bill, depositMinor, paid) => {
        const { taxPerRate } = chargeBill(bill).totals
        expect(balance(invoicePostings({ taxPerRate, depositMinor }))).toBe(0)
        expect(balance(creditPostings(taxPerRate))).toBe(0)
        expect(balance(paymentPostings(paid))).toBe(0)
      },
    ),
  )
})

test('An invoice takes its deposit out of the deposits; what is left is owed', () => {
  const taxPerRate = [{ category: 'S' as const, ratePercent: '19', baseMinor: 10_000, taxMinor: 1_900 }]
  expect(invoicePostings({ taxPerRate, depositMinor: 2_000 })).toEqual([
    { account: 'owed', amountMinor: 11_900 },
    { account: 'sales', amountMinor: -10_000, ratePercent: '19' },
    { account: 'tax', amountMinor: -1_900, ratePercent: '19' },
    { account: 'deposits', amountMinor: 2_000 },
    { account: 'owed', amountMinor: -2_000 },
  ])
})

test('A tip and the rounding of cash are no sales', () => {
  const paid = { method: 'cash', amountMinor: 9_998, tipMinor: 500, roundingMinor: 2, before: false } as const
  expect(paymentPostings(paid)).toEqual([
    { account: 'cash', amountMinor: 10_500 },
    { account: 'owed', amountMinor: -9_998 },
    { account: 'tips', amountMinor: -500 },
    { account: 'rounding', amountMinor: -2 },
  ])
})
