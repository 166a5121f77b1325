// Worked by hand for these tests. The rules behind them: EN 16931-1 (BR-CO-10 to BR-CO-17, BR-S-08, BR-S-09), rounding half
// up (common practice; the norm leaves the choice), ISO 4217 on the digits of a currency, largest remainders.
import { describe, expect, it } from 'vitest'
import { roundTo } from '../../../main/domain/money/decimal.ts'
import { documentTotals, lineAmountMinor } from '../../../main/domain/money/document.ts'
import { allocate, majorOf, minorOf, minorUnitsOf } from '../../../main/domain/money/index.ts'
import { taxInGross, taxOnNet } from '../../../main/domain/money/tax.ts'

const same = (count: number, amountMinor: number, ratePercent: string) =>
  Array.from({ length: count }, () => ({ amountMinor, ratePercent }))

describe('tax is rounded once a rate, never line by line', () => {
  it.each<[count: number, amountMinor: number, rate: string, taxMinor: number, byLine: number]>([
    // 3 × 0.35 = 1.05, of which 19 % are 0.1995; a line's 0.0665 would be 0.07, three times 0.21.
    [3, 35, '19', 20, 21],
    // 10 × 0.03 = 0.30: 0.057; a line's 0.0057 would be 0.01.
    [10, 3, '19', 6, 10],
    // 7 × 1.99 = 13.93 at 8.875 %: 1.2362875; a line's 0.1766 would be 0.18.
    [7, 199, '8.875', 124, 126],
    // 4 × 0.10 = 0.40 at 2.5 %: 0.01; a line's 0.0025 would be nothing.
    [4, 10, '2.5', 1, 0],
  ])('%i lines of %i at %s %%', (count, amountMinor, rate, taxMinor, byLine) => {
    expect(documentTotals({ lines: same(count, amountMinor, rate) }).taxMinor).toBe(taxMinor)
    expect(count * taxOnNet(amountMinor, rate).taxMinor).toBe(byLine)
  })

  it('also where prices have it in them, and the gross sum stays', () => {
    // 3 × 9.99 = 29.97; without 19 % that is 25.1848, so 25.18 and 4.79; line by line it would be 8.39 and 1.60 each.
    const totals = documentTotals({ lines: same(3, 999, '19'), amounts: 'gross' })
    expect(totals).toMatchObject({ withoutTaxMinor: 2518, taxMinor: 479, withTaxMinor: 2997 })
    expect(taxInGross(999, '19')).toEqual({ netMinor: 839, taxMinor: 160 })
  })

  it('with two rates, a reduction and a charge on the whole, and a payment', () => {
    // 19 %: 100.00 - 10.00 = 90.00, tax 17.10. 7 %: 200.00 + 5.00 = 205.00, tax 14.35.
    const totals = documentTotals({
      lines: [
        { amountMinor: 10_000, ratePercent: '19' },
        { amountMinor: 20_000, ratePercent: '7.0' },
      ],
      adjustments: [
        { amountMinor: 1_000, ratePercent: '19.00', charge: false },
        { amountMinor: 500, ratePercent: 7, charge: true },
      ],
      paidMinor: 5_000,
    })
    expect(totals).toEqual({
      taxPerRate: [
        { category: 'S', ratePercent: '19', baseMinor: 9_000, taxMinor: 1_710 },
        { category: 'S', ratePercent: '7', baseMinor: 20_500, taxMinor: 1_435 },
      ],
      sumOfLinesMinor: 30_000,
      allowancesMinor: 1_000,
      chargesMinor: 500,
      withoutTaxMinor: 29_500,
      taxMinor: 3_145,
      withTaxMinor: 32_645,
      paidMinor: 5_000,
      dueMinor: 27_645,
    })
  })

  it('gives back as much as it took, a tie too', () => {
    // 1 % of 0.50 is 0.005.
    expect(taxOnNet(50, '1').taxMinor).toBe(1)
    expect(taxOnNet(-50, '1').taxMinor).toBe(-1)
    expect(taxInGross(-999, '19')).toEqual({ netMinor: -839, taxMinor: -160 })
  })
})

describe('an amount has the digits of its currency (ISO 4217)', () => {
  it.each<[string, number]>([
    ['JPY', 0],
    ['ISK', 0],
    ['CLP', 0],
    ['UGX', 0],
    ['XPF', 0],
    ['EUR', 2],
    ['MRU', 2],
    ['MGA', 2],
    ['HUF', 2],
    ['KWD', 3],
    ['TND', 3],
    ['CLF', 4],
    ['UYW', 4],
  ])('%s has %i', (code, digits) => {
    expect(minorUnitsOf(code)).toBe(digits)
    const one = digits === 0 ? '1' : `1.${'0'.repeat(digits)}`
    expect(majorOf(10 ** digits, code)).toBe(one)
    expect(minorOf('1', code)).toBe(10 ** digits)
  })

  it('and tax is rounded to them', () => {
    // 10 % of 1,005 yen are 100.5; of 1,100 with it in, 100.
    expect(taxOnNet(1_005, '10').taxMinor).toBe(101)
    expect(taxInGross(1_100, '10')).toEqual({ netMinor: 1_000, taxMinor: 100 })
    // 5 % of 1.234 dinar are 0.0617.
    expect(taxOnNet(minorOf('1.234', 'KWD'), '5').taxMinor).toBe(62)
    // Two and a half pieces at 0.0005 are 0.00125, in ten-thousandths 13.
    expect(lineAmountMinor('2.5', '0.0005', 'CLF')).toBe(13)
    expect(() => minorOf('1.5', 'JPY')).toThrow('JPY')
  })
})

describe('quantities, shares and coins', () => {
  it.each<[quantity: string, price: string, per: number, minor: number]>([
    ['0.333', '12.00', 1, 400],
    ['250', '8.80', 1_000, 220],
    ['3', '0.335', 1, 101],
    ['-2', '1.005', 1, -201],
  ])('%s at %s for %i', (quantity, price, per, minor) => {
    expect(lineAmountMinor(quantity, price, 'EUR', per)).toBe(minor)
  })

  it.each<[total: number, weights: (number | string)[], parts: number[]]>([
    [1_001, [1, 1, 1, 1], [251, 250, 250, 250]],
    [10, ['0.1', '0.2', '0.7'], [1, 2, 7]],
    [3, [1, 1], [2, 1]],
    [-7, [2, 1], [-5, -2]],
    [5, [0, 1, 0], [0, 5, 0]],
    [1, [1, 2, 3], [0, 0, 1]],
    // A sixth, a third and a half of 100: 16.67, 33.33 and 50; the largest remainder is the first's.
    [100, [1, 2, 3], [17, 33, 50]],
  ])('%i by %j', (total, weights, parts) => {
    expect(allocate(total, weights)).toEqual(parts)
  })

  it('rounds to five cents, and a tie as it is asked to', () => {
    expect(roundTo('7.325', '0.05')).toBe('7.35')
    expect(roundTo('7.32', '0.05')).toBe('7.30')
    expect(roundTo('2.665', '0.01', 'half-even')).toBe('2.66')
    expect(roundTo('2.665', '0.01')).toBe('2.67')
    expect(roundTo('-0.005', '0.01')).toBe('-0.01')
  })
})
