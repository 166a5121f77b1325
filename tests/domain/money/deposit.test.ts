import { expect, test } from 'vitest'
import { splitDeposit } from '../../../main/domain/money/deposit.ts'

test('Thirty percent of 99.99 are 30.00, and the balance is the rest', () => {
  // 29.997, half up.
  expect(splitDeposit(9999, 30)).toEqual({ depositMinor: 3000, balanceMinor: 6999 })
  expect(splitDeposit(9999, 0)).toEqual({ depositMinor: 0, balanceMinor: 9999 })
  expect(splitDeposit(9999, '100')).toEqual({ depositMinor: 9999, balanceMinor: 0 })
})

test('Less than nothing and more than all are refused', () => {
  for (const percent of [-1, '100.01'])
    expect(() => splitDeposit(9999, percent)).toThrow(
      expect.objectContaining({ code: 'deposit-out-of-range', field: 'percent' }),
    )
})
