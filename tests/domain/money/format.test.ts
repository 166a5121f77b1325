import { expect, test } from 'vitest'
import { formatMoney, readMoney } from '../../../main/domain/money/format.ts'

test('Written as the locale does, with all the digits of the currency', () => {
  expect(formatMoney(123456, 'EUR', 'de-DE').replace('\u00a0', ' ')).toBe('1.234,56 €')
  expect(formatMoney(123450, 'USD', 'en-US')).toBe('$1,234.50')
  expect(formatMoney(500, 'JPY', 'en-US')).toBe('¥500')
})

test.each([
  ['1.234,50 €', 'EUR', 'de-DE', 123450],
  ['1,234.50', 'USD', 'en-US', 123450],
  ['$1234.5', 'USD', 'en-US', 123450],
  ['-3', 'USD', 'en-US', -300],
] as const)('"%s" is read back', (text, currency, locale, minor) => {
  expect(readMoney(text, currency, locale)).toBe(minor)
})

test('A comma that groups nothing is not taken for a point', () => {
  for (const text of ['12,34', '1.2.3', 'ten'])
    expect(() => readMoney(text, 'USD', 'en-US', 'price')).toThrow(
      expect.objectContaining({
        code: 'amount-bad',
        field: 'price',
        message: expect.stringContaining('$1,234.50'),
      }),
    )
})
