import { expect, test } from 'vitest'
import { documentTotals, lineAmountMinor } from '../../../main/domain/money/document.ts'

test('A line is quantity times price, by the hundred where it is priced so', () => {
  expect(lineAmountMinor('2.5', '0.99', 'USD')).toBe(248)
  expect(lineAmountMinor(10, '49.90', 'USD', 100)).toBe(499)
  expect(lineAmountMinor(3, 150, 'JPY')).toBe(450)
  expect(() => lineAmountMinor(1, 1, 'USD', 0)).toThrow(expect.objectContaining({ field: 'perQuantity' }))
})

test('Two rates, a reduction and a payment, worked by hand', () => {
  const totals = documentTotals({
    lines: [
      { amountMinor: 10_000, ratePercent: '19' },
      { amountMinor: 5_000, ratePercent: '7' },
    ],
    adjustments: [{ amountMinor: 1_000, ratePercent: 19, charge: false }],
    paidMinor: 60,
  })
  expect(totals).toEqual({
    taxPerRate: [
      { category: 'S', ratePercent: '19', baseMinor: 9_000, taxMinor: 1_710 },
      { category: 'S', ratePercent: '7', baseMinor: 5_000, taxMinor: 350 },
    ],
    sumOfLinesMinor: 15_000,
    allowancesMinor: 1_000,
    chargesMinor: 0,
    withoutTaxMinor: 14_000,
    taxMinor: 2_060,
    withTaxMinor: 16_060,
    paidMinor: 60,
    dueMinor: 16_000,
  })
})

test('Amounts with tax in them keep their sum', () => {
  const totals = documentTotals({ lines: [{ amountMinor: 11_900, ratePercent: 19 }], amounts: 'gross' })
  expect(totals).toMatchObject({ withoutTaxMinor: 10_000, taxMinor: 1_900, withTaxMinor: 11_900 })
})
