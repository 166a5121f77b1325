import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { roundTo } from '../../../main/domain/money/decimal.ts'
import { splitDeposit } from '../../../main/domain/money/deposit.ts'
import { documentTotals } from '../../../main/domain/money/document.ts'
import {
  allocate,
  formatMoney,
  majorOf,
  minorOf,
  payableCurrencies,
  readMoney,
  sumMinor,
  timesMinor,
} from '../../../main/domain/money/index.ts'
import { taxInGross } from '../../../main/domain/money/tax.ts'

// Products of an amount and a ratio leave the safe integers long before the amounts do: go to the limits.
const amount = fc.maxSafeInteger()
const weight = fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER })
const weights = fc.array(weight, { minLength: 1, maxLength: 12 }).filter(list => list.some(each => each > 0))
const currency = fc.constantFrom(...payableCurrencies())
const everyday = fc.integer({ min: -100_000_000, max: 100_000_000 })
const rate = fc.integer({ min: 0, max: 40_000 }).map(thousandths => (thousandths / 1000).toFixed(3))

describe('allocation', () => {
  it('conserves the sum and never gives a part the other sign', () => {
    fc.assert(
      fc.property(amount, weights, (total, list) => {
        const parts = allocate(total, list)
        expect(parts.reduce((sum, part) => sum + BigInt(part), 0n)).toBe(BigInt(total))
        for (const part of parts) expect(Math.sign(part) * Math.sign(total)).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('keeps every part within one unit of its exact share, and the order of the weights', () => {
    fc.assert(
      fc.property(amount, weights, (total, list) => {
        const parts = allocate(total, list)
        const sum = list.reduce((a, b) => a + BigInt(b), 0n)
        parts.forEach((part, i) => {
          const off = BigInt(part) * sum - BigInt(total) * BigInt(list[i]!)
          expect(off < 0n ? -off : off).toBeLessThan(sum)
          list.forEach((other, j) => {
            if (list[i]! > other) expect(Math.abs(part)).toBeGreaterThanOrEqual(Math.abs(parts[j]!))
          })
        })
      }),
    )
  })

  it('reads decimal weights as the ratio they write', () => {
    expect(allocate(1000, ['0.3', '0.7'])).toEqual(allocate(1000, [3, 7]))
    expect(allocate(1000, [0.1, 0.2, 0.7])).toEqual([100, 200, 700])
  })
})

describe('tax', () => {
  it('inside a gross amount adds up to it, and comes back within a unit when put on top again', () => {
    fc.assert(
      fc.property(everyday, rate, (grossMinor, ratePercent) => {
        const { netMinor, taxMinor } = taxInGross(grossMinor, ratePercent)
        expect(netMinor + taxMinor).toBe(grossMinor)
        const exact = (netMinor * Number(ratePercent)) / 100
        expect(Math.abs(taxMinor - exact)).toBeLessThanOrEqual(0.5 * (1 + Number(ratePercent) / 100) + 1e-6)
      }),
    )
  })

  it('on a document always adds up, whichever way amounts are meant', () => {
    const line = fc.record({ amountMinor: everyday, ratePercent: rate })
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 20 }),
        fc.array(fc.record({ amountMinor: fc.nat(1_000_000), ratePercent: rate, charge: fc.boolean() }), {
          maxLength: 4,
        }),
        fc.constantFrom('net' as const, 'gross' as const),
        everyday,
        (lines, adjustments, amounts, paidMinor) => {
          const totals = documentTotals({ lines, adjustments, amounts, paidMinor })
          const given = totals.sumOfLinesMinor - totals.allowancesMinor + totals.chargesMinor
          expect(totals.withoutTaxMinor + totals.taxMinor).toBe(totals.withTaxMinor)
          expect(amounts === 'net' ? totals.withoutTaxMinor : totals.withTaxMinor).toBe(given)
          expect(totals.dueMinor).toBe(totals.withTaxMinor - paidMinor)
        },
      ),
    )
  })

  it('counts one rate written two ways once', () => {
    const lines = [
      { amountMinor: 33, ratePercent: '19' },
      { amountMinor: 33, ratePercent: '19.00' },
      { amountMinor: 33, ratePercent: 19 },
    ]
    expect(documentTotals({ lines }).taxPerRate).toEqual([
      { category: 'S', ratePercent: '19', baseMinor: 99, taxMinor: 19 },
    ])
  })
})

describe('amounts', () => {
  it('go through their decimal writing and back unchanged', () => {
    fc.assert(
      fc.property(amount, currency, (minor, code) => {
        expect(minorOf(majorOf(minor, code), code)).toBe(minor)
      }),
    )
  })

  it('multiply exactly at the limits', () => {
    fc.assert(
      fc.property(amount, minor => {
        expect(timesMinor(minor, 1)).toBe(minor)
        expect(timesMinor(minor, '-1')).toBe(minor === 0 ? 0 : -minor)
      }),
    )
    // Number.MAX_SAFE_INTEGER / 3 = 3002399751580330.33: floating products of the two leave the safe range.
    expect(timesMinor(Number.MAX_SAFE_INTEGER, '0.333333333333333333')).toBe(3002399751580330)
  })

  it('round to a multiple of the step, at most half a step away', () => {
    fc.assert(
      fc.property(
        everyday,
        fc.constantFrom(1, 5, 10, 25),
        fc.constantFrom('half-up' as const, 'half-even' as const),
        (cents, step, how) => {
          const rounded = minorOf(roundTo(majorOf(cents, 'EUR'), majorOf(step, 'EUR'), how), 'EUR')
          expect(Math.abs(rounded % step)).toBe(0)
          expect(Math.abs(rounded - cents) * 2).toBeLessThanOrEqual(step)
        },
      ),
    )
  })

  it('split into deposit and balance without loss', () => {
    fc.assert(
      fc.property(everyday, fc.integer({ min: 0, max: 100 }), (total, percent) => {
        const { depositMinor, balanceMinor } = splitDeposit(total, percent)
        expect(sumMinor([depositMinor, balanceMinor])).toBe(total)
      }),
    )
  })

  it('are read back as they are shown, in every locale tried', () => {
    const locale = fc.constantFrom(
      'en-US',
      'en-GB',
      'de-DE',
      'de-CH',
      'fr-FR',
      'nb-NO',
      'pl-PL',
      'en-IN',
      'ja-JP',
      'it-IT',
    )
    fc.assert(
      fc.property(
        everyday,
        fc.constantFrom('USD', 'EUR', 'GBP', 'JPY', 'KWD', 'CHF', 'NOK', 'PLN', 'INR'),
        locale,
        (minor, code, where) => {
          expect(readMoney(formatMoney(minor, code, where), code, where)).toBe(minor)
        },
      ),
    )
  })
})
