import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chargeBill } from '../../../main/domain/money/bill.ts'
import { type CreditTotals, creditTotals } from '../../../main/domain/money/credit.ts'
import { bills } from './bills.ts'

/** By rate, so that the order of rates does not matter. */
const byRate = (totals: Pick<CreditTotals, 'taxPerRate'>[]) => {
  const sums = new Map<string, [number, number]>()
  for (const { category, ratePercent, baseMinor, taxMinor } of totals.flatMap(each => each.taxPerRate)) {
    const key = `${category} ${ratePercent}`
    const [base, tax] = sums.get(key) ?? [0, 0]
    sums.set(key, [base + baseMinor, tax + taxMinor])
  }
  return new Map([...sums].filter(([, [base, tax]]) => base !== 0 || tax !== 0).sort())
}

test('An invoice and its credit note are nothing, in one piece or in three', () => {
  fc.assert(
    fc.property(
      bills,
      fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 16, maxLength: 16 }),
      (bill, cuts) => {
        const { lines, totals } = chargeBill(bill)
        const whole = lines.map(line => line.amountMinor - line.allowanceMinor)
        fc.pre(whole.some(minor => minor > 0))
        const none = whole.map(() => 0)
        const atOnce = creditTotals(lines, none, whole, bill.amounts)
        expect(byRate([atOnce])).toEqual(byRate([totals]))
        expect(atOnce.withTaxMinor).toBe(totals.withTaxMinor)
        expect(atOnce.netsMinor.reduce((sum, each) => sum + each, 0)).toBe(totals.withoutTaxMinor)

        const first = whole.map((minor, i) => Math.floor((minor * cuts[i]!) / 100))
        const second = whole.map((minor, i) => Math.floor(((minor - first[i]!) * cuts[8 + i]!) / 100))
        const pieces: CreditTotals[] = []
        let before = none
        for (const now of [first, second, whole.map((minor, i) => minor - first[i]! - second[i]!)]) {
          if (now.every(minor => minor === 0)) continue
          pieces.push(creditTotals(lines, before, now, bill.amounts))
          before = before.map((minor, i) => minor + now[i]!)
        }
        expect(byRate(pieces)).toEqual(byRate([totals]))
        expect(pieces.reduce((sum, each) => sum + each.withTaxMinor, 0)).toBe(totals.withTaxMinor)
      },
    ),
  )
})

test('More than is left, less than nothing and nothing at all are refused', () => {
  const lines = [
    { name: 'Wash', amountMinor: 1_000, allowanceMinor: 100, ratePercent: '19', category: 'S' as const },
  ]
  for (const [before, now, code] of [
    [0, 901, 'credit-too-large'],
    [500, 401, 'credit-too-large'],
    [0, -1, 'credit-too-large'],
    [0, 0, 'credit-nothing'],
  ] as const)
    expect(() => creditTotals(lines, [before], [now], 'net')).toThrow(expect.objectContaining({ code }))
})

test('What is refused is named: a credit below nothing otherwise than one too large, each at its line', () => {
  const line = { amountMinor: 1_000, allowanceMinor: 0, ratePercent: '19', category: 'S' as const }
  const lines = [
    { ...line, name: 'Wash' },
    { ...line, name: 'Polish' },
  ]
  const credit = (polish: number) => () => creditTotals(lines, [0, 0], [0, polish], 'net')
  expect(credit(-1)).toThrow(
    expect.objectContaining({
      message: 'A credit of Polish is 0 or more.',
      field: 'lines.1.amountMinor',
      value: -1,
    }),
  )
  expect(credit(1_001)).toThrow(
    expect.objectContaining({
      message: 'More is credited of Polish than is left of it; credit it in full at most.',
      field: 'lines.1.amountMinor',
      value: 1_001,
    }),
  )
  // All that is left may be credited.
  expect(credit(1_000)().netsMinor).toEqual([0, 1_000])
})
