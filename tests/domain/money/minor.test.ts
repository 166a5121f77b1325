import { expect, test } from 'vitest'
import {
  checkMinor,
  majorOf,
  minorOf,
  percentOfMinor,
  sumMinor,
  timesMinor,
} from '../../../main/domain/money/minor.ts'

test('Major and minor units', () => {
  expect([minorOf('12.34', 'USD'), minorOf(12, 'JPY'), minorOf('12.3400', 'USD')]).toEqual([1234, 12, 1234])
  expect([majorOf(-5, 'USD'), majorOf(1234, 'KWD'), majorOf(7, 'JPY')]).toEqual(['-0.05', '1.234', '7'])
})

test('No cent goes missing unasked', () => {
  expect(() => minorOf('12.345', 'USD')).toThrow(expect.objectContaining({ code: 'amount-too-fine' }))
  expect([minorOf('12.345', 'USD', 'half-up'), minorOf('12.345', 'USD', 'half-even')]).toEqual([1235, 1234])
})

test('Products are rounded once', () => {
  expect([timesMinor(1005, '0.5'), timesMinor(1005, '0.5', 'half-even')]).toEqual([503, 502])
  // 9.99 at 8.25 percent: 0.824175.
  expect(percentOfMinor(999, 8.25)).toBe(82)
})

test('Sums are exact or refused', () => {
  expect(sumMinor([1, -3, 5])).toBe(3)
  expect(() => sumMinor([Number.MAX_SAFE_INTEGER, 1])).toThrow(
    expect.objectContaining({ code: 'amount-not-whole' }),
  )
  expect(() => checkMinor(0.5, 'price')).toThrow(expect.objectContaining({ field: 'price' }))
  expect(Object.is(checkMinor(-0, 'price'), 0)).toBe(true)
})
