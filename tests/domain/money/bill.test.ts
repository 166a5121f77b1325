import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Bill, chargeBill } from '../../../main/domain/money/bill.ts'
import { sumMinor } from '../../../main/domain/money/index.ts'
import { bills } from './bills.ts'

const usual = { percent: '19', category: 'S' as const }
const reduced = { percent: '7', category: 'S' as const }
const line = (name: string, priceMinor: number, more: Partial<Bill['lines'][number]> = {}) => ({
  name,
  quantity: '1',
  priceMinor,
  discounts: [],
  tax: usual,
  ...more,
})
const bill = (lines: Bill['lines'], more: Partial<Bill> = {}): Bill => ({
  currency: 'EUR',
  lines,
  discounts: [],
  amounts: 'net',
  exemption: '',
  reversed: false,
  ...more,
})

test('Two rates, a discount on a line and one on the whole, worked by hand', () => {
  const { lines, totals } = chargeBill(
    bill(
      [
        line('Two layers', 100_000, { discounts: [{ amountMinor: 10_000, reason: 'second car' }] }),
        line('Care kit', 5_000, { quantity: '2', tax: reduced }),
      ],
      { discounts: [{ amountMinor: 20_000, reason: 'late' }] },
    ),
  )
  // 900.00 and 100.00 share 200.00 as 180.00 and 20.00.
  expect(lines.map(each => [each.amountMinor, each.allowanceMinor, each.netMinor])).toEqual([
    [90_000, 18_000, 90_000],
    [10_000, 2_000, 10_000],
  ])
  // 19 percent of 720.00 is 136.80; 7 percent of 80.00 is 5.60.
  expect(totals).toMatchObject({ allowancesMinor: 20_000, withoutTaxMinor: 80_000, taxMinor: 14_240 })
})

test('An exempt customer pays a price without the tax that is in it', () => {
  const { lines, totals } = chargeBill(
    bill([line('Wash', 11_900)], { amounts: 'gross', exemption: 'Resale' }),
  )
  expect(lines[0]).toMatchObject({ priceMinor: 10_000, amountMinor: 10_000, category: 'E', ratePercent: '0' })
  expect(totals).toMatchObject({ withTaxMinor: 10_000, taxMinor: 0 })
})

test('A customer who owes the tax pays a price without it, taxed in a category of its own', () => {
  const { lines, totals } = chargeBill(bill([line('Wash', 11_900)], { amounts: 'gross', reversed: true }))
  expect(lines[0]).toMatchObject({ amountMinor: 10_000, category: 'AE', ratePercent: '0' })
  expect(totals).toMatchObject({
    taxPerRate: [{ category: 'AE', ratePercent: '0', baseMinor: 10_000, taxMinor: 0 }],
    withTaxMinor: 10_000,
  })
})

test('What is charged is the prices less what was taken off, and the lines bear all of it', () => {
  fc.assert(
    fc.property(bills, given => {
      const { lines, totals } = chargeBill(given)
      const charged = sumMinor(lines.map(each => each.amountMinor - each.allowanceMinor))
      expect(charged).toBe(given.amounts === 'net' ? totals.withoutTaxMinor : totals.withTaxMinor)
      expect(totals.withoutTaxMinor + totals.taxMinor).toBe(totals.withTaxMinor)
      for (const each of lines) {
        expect(each.allowanceMinor).toBeGreaterThanOrEqual(0)
        expect(each.allowanceMinor).toBeLessThanOrEqual(each.amountMinor)
      }
      if (given.exemption === '' && !given.reversed) {
        const asked = given.lines.map(each => Math.round(Number(each.quantity) * each.priceMinor))
        const off = [...given.discounts, ...given.lines.flatMap(each => each.discounts)]
        expect(charged).toBe(sumMinor(asked) - sumMinor(off.map(each => each.amountMinor)))
      } else expect(totals.taxMinor).toBe(0)
    }),
  )
})

// EN 16931-1 BR-CO-10 and BR-CO-13: lines without tax less allowances are what the tax is counted on.
test('Lines without their tax add up to the base of it, a cent aside where prices have it in them', () => {
  fc.assert(
    fc.property(bills, given => {
      const { lines, totals } = chargeBill(given)
      for (const rate of totals.taxPerRate) {
        const same = lines.filter(
          each => each.ratePercent === rate.ratePercent && each.category === rate.category,
        )
        const nets = sumMinor(same.map(each => each.netMinor))
        const allowed = sumMinor(same.map(each => each.allowanceMinor))
        const allowedNet =
          given.amounts === 'net' ? allowed : Math.round(allowed / (1 + Number(rate.ratePercent) / 100))
        if (nets !== 0) expect(Math.abs(nets - allowedNet - rate.baseMinor)).toBeLessThanOrEqual(1)
      }
    }),
  )
})

test('A discount without a reason, too large or below zero is refused at its field', () => {
  const off = (amountMinor: number, reason = 'friend') => [{ amountMinor, reason }]
  for (const [given, code, field] of [
    [
      bill([line('Wash', 100, { discounts: off(50, ' ') })]),
      'discount-unexplained',
      'lines.0.discounts.0.reason',
    ],
    [
      bill([line('Wash', 100, { discounts: off(101) })]),
      'discount-too-large',
      'lines.0.discounts.0.amountMinor',
    ],
    [bill([line('Wash', 100)], { discounts: off(101) }), 'discount-too-large', 'discounts.0.amountMinor'],
    [bill([line('Wash', 100)], { discounts: off(-1) }), 'discount-negative', 'discounts.0.amountMinor'],
    [bill([line('Wash', -1)]), 'price-negative', 'lines.0.priceMinor'],
  ] as const)
    expect(() => chargeBill(given)).toThrow(expect.objectContaining({ code, field }))
})
