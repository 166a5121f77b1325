import fc from 'fast-check'
import { expect, test } from 'vitest'
import { unitPriceText } from '../../../main/domain/invoicing/figures.ts'

test('a price of one is the net over the quantity, without zeros behind it', () => {
  expect(unitPriceText(24_000, '1', 'EUR')).toBe('240')
  expect(unitPriceText(24_050, '1', 'EUR')).toBe('240.5')
  expect(unitPriceText(10_000, '3', 'EUR')).toBe('33.33333333')
  expect(unitPriceText(20_000, '3', 'EUR')).toBe('66.66666667')
  expect(unitPriceText(-10_000, '3', 'EUR')).toBe('-33.33333333')
  expect(unitPriceText(1_000, '2.5', 'EUR')).toBe('4')
  expect(unitPriceText(1, '3', 'EUR')).toBe('0.00333333')
  // Yen have no minor unit (ISO 4217).
  expect(unitPriceText(1_000, '4', 'JPY')).toBe('250')
})

test('times the quantity it is the net again, to the cent', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -9_999_999, max: 9_999_999 }),
      fc.integer({ min: 1, max: 500 }),
      (net, count) => {
        expect(Math.round(Number(unitPriceText(net, String(count), 'EUR')) * count * 100) || 0).toBe(net)
      },
    ),
  )
})
