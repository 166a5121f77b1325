import { describe, expect, it } from 'vitest'
import { currencyNamed } from '../../../main/domain/money/currencies.ts'
import { roundTo } from '../../../main/domain/money/decimal.ts'
import { splitDeposit } from '../../../main/domain/money/deposit.ts'
import { documentTotals, lineAmountMinor } from '../../../main/domain/money/document.ts'
import {
  allocate,
  checkMinor,
  formatMoney,
  minorOf,
  minorUnitsOf,
  readMoney,
  sumMinor,
  timesMinor,
} from '../../../main/domain/money/index.ts'
import { taxInGross } from '../../../main/domain/money/tax.ts'
import { Refusal } from '../../../main/domain/refusal.ts'

function refusalOf(act: () => unknown): Refusal {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('nothing was refused')
}

describe('money refuses', () => {
  const lines = [{ amountMinor: 1, ratePercent: 19 }]
  const cases: [string, string, () => unknown][] = [
    ['currency-unknown', 'currency', () => currencyNamed('usd')],
    ['currency-no-money', 'currency', () => minorUnitsOf('XAU')],
    ['decimal-bad', 'amount', () => minorOf('12,50', 'USD')],
    ['decimal-bad', 'amount', () => minorOf(1e-7, 'USD')],
    ['decimal-bad', 'amount', () => minorOf(Number.NaN, 'USD')],
    ['amount-too-fine', 'amount', () => minorOf('12.345', 'USD')],
    ['amount-too-fine', 'amount', () => minorOf('0.5', 'JPY')],
    ['amount-not-whole', 'minor', () => checkMinor(0.5, 'minor')],
    ['amount-not-whole', 'x', () => checkMinor(2 ** 53, 'x')],
    ['amount-not-whole', 'amounts', () => sumMinor([Number.MAX_SAFE_INTEGER, 1])],
    ['amount-not-whole', 'factor', () => timesMinor(Number.MAX_SAFE_INTEGER, 2)],
    [
      'amount-not-whole',
      'lines.1.amountMinor',
      () => documentTotals({ lines: [...lines, { amountMinor: 0.1, ratePercent: 0 }] }),
    ],
    ['step-not-positive', 'step', () => roundTo('1', '0')],
    ['weight-negative', 'weights.1', () => allocate(100, [1, -1])],
    ['weights-empty', 'weights', () => allocate(100, [0, 0])],
    ['weights-empty', 'weights', () => allocate(100, [])],
    ['rate-negative', 'ratePercent', () => taxInGross(100, '-1')],
    [
      'rate-negative',
      'lines.0.ratePercent',
      () => documentTotals({ lines: [{ amountMinor: 1, ratePercent: -5 }] }),
    ],
    [
      'adjustment-negative',
      'adjustments.0.amountMinor',
      () => documentTotals({ lines, adjustments: [{ amountMinor: -1, ratePercent: 19, charge: true }] }),
    ],
    ['per-not-positive', 'perQuantity', () => lineAmountMinor(1, '1.00', 'EUR', 0)],
    ['deposit-out-of-range', 'percent', () => splitDeposit(100, 101)],
    ['amount-bad', 'amount', () => readMoney('1,5', 'USD', 'en-US')],
    ['amount-bad', 'amount', () => readMoney('1,2345.00', 'USD', 'en-US')],
    ['amount-bad', 'amount', () => readMoney('1.2.3', 'USD', 'en-US')],
    ['amount-bad', 'amount', () => readMoney('12 pounds', 'GBP', 'en-GB')],
    ['amount-bad', 'amount', () => readMoney('', 'USD', 'en-US')],
    ['amount-too-fine', 'amount', () => readMoney('1.005', 'USD', 'en-US')],
  ]
  it.each(cases)('%s in %s', (code, field, act) => {
    const refusal = refusalOf(act)
    expect(refusal).toMatchObject({ code, field })
    // Name the value, then the remedy: both parts of the sentence are there.
    expect(refusal.message.length).toBeGreaterThan(30)
  })
})

describe('writing an amount', () => {
  it('shows every minor unit the currency has, in the locale’s own way', () => {
    expect(formatMoney(123456, 'USD', 'en-US')).toBe('$1,234.56')
    expect(formatMoney(123456, 'EUR', 'de-DE').replaceAll(/\s/gu, ' ')).toBe('1.234,56 €')
    expect(formatMoney(123456, 'JPY', 'en-US')).toBe('¥123,456')
    expect(formatMoney(123456, 'KWD', 'en-US').replaceAll(/\s/gu, ' ')).toBe('KWD 123.456')
    // Locale data hides the forint's fillér; ISO 4217 counts them.
    expect(formatMoney(123456, 'HUF', 'en-US').replaceAll(/\s/gu, ' ')).toBe('HUF 1,234.56')
    expect(formatMoney(-Number.MAX_SAFE_INTEGER, 'USD', 'en-US')).toBe('-$90,071,992,547,409.91')
  })

  it('reads what people type', () => {
    expect(readMoney('$1,234.5', 'USD', 'en-US')).toBe(123450)
    expect(readMoney(' 1234 ', 'USD', 'en-US')).toBe(123400)
    expect(readMoney('1.234,50 €', 'EUR', 'de-DE')).toBe(123450)
    expect(readMoney("1'234.50", 'CHF', 'de-CH')).toBe(123450)
    expect(readMoney('12,34,567.00', 'INR', 'en-IN')).toBe(123456700)
    expect(readMoney('-12.5', 'USD', 'en-US')).toBe(-1250)
    expect(readMoney('USD 3', 'USD', 'en-US')).toBe(300)
  })
})
