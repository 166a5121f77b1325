import { expect, it } from 'vitest'
import { moneyWords, plainMoney } from '../../../main/domain/money/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

it('writes money with its currency, and without it by thousands', () => {
  expect(moneyWords(4_800, 'USD')).toBe('$48.00')
  expect(moneyWords(4_800, 'EUR')).toBe('€48.00')
  expect(plainMoney(123_456_750, 'USD')).toBe('1,234,567.50')
  // ISO 4217: the yen has no minor unit.
  expect(plainMoney(1_250, 'JPY')).toBe('1,250')
})

it('writes it as German does', () => {
  speaking('de', () => {
    expect(moneyWords(4_800, 'EUR')).toBe('48,00\u00a0€')
    expect(plainMoney(123_456_750, 'EUR')).toBe('1.234.567,50')
  })
})
