import { expect, test } from 'vitest'
import { currencyNamed, minorUnitsOf, payableCurrencies } from '../../../main/domain/money/currencies.ts'

// ISO 4217, list one, from memory.
test.each([
  ['JPY', 0, '392'],
  ['USD', 2, '840'],
  ['EUR', 2, '978'],
  ['KWD', 3, '414'],
  ['CLF', 4, '990'],
])('%s has %i digits and the number %s', (code, digits, numericCode) => {
  expect(minorUnitsOf(code)).toBe(digits)
  expect(currencyNamed(code).numericCode).toBe(numericCode)
})

test('Gold is listed but nobody pays with it', () => {
  expect(currencyNamed('XAU').minorUnits).toBeNull()
  expect(() => minorUnitsOf('XAU')).toThrow(expect.objectContaining({ code: 'currency-no-money' }))
  expect(payableCurrencies()).not.toContain('XAU')
})

test('A code the standard does not list is refused', () => {
  expect(() => minorUnitsOf('usd', 'shop.currency')).toThrow(
    expect.objectContaining({ code: 'currency-unknown', field: 'shop.currency', value: 'usd' }),
  )
})
