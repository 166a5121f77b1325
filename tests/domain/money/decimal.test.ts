import { expect, test } from 'vitest'
import {
  divideRounded,
  readDecimal,
  rescale,
  roundTo,
  writeDecimal,
} from '../../../main/domain/money/decimal.ts'

// Ties as IEEE 754 names them: half up goes away from zero, half even to the even neighbour.
test.each([
  [5n, 2n, 3n, 2n],
  [7n, 2n, 4n, 4n],
  [-5n, 2n, -3n, -2n],
  [4n, 3n, 1n, 1n],
  [5n, 3n, 2n, 2n],
])('%s / %s is %s half up and %s half even', (numerator, denominator, up, even) => {
  expect(divideRounded(numerator, denominator, 'half-up')).toBe(up)
  expect(divideRounded(numerator, denominator, 'half-even')).toBe(even)
})

test('A decimal is read and written exactly', () => {
  expect(readDecimal(' -0.050 ', 'x')).toEqual({ units: -50n, scale: 3 })
  expect(rescale({ units: 125n, scale: 2 }, 1, 'half-even')).toBe(12n)
  expect(rescale({ units: 5n, scale: 0 }, 2, 'half-up')).toBe(500n)
  expect([writeDecimal(-5n, 2), writeDecimal(1234n, 0), writeDecimal(0n, 2)]).toEqual([
    '-0.05',
    '1234',
    '0.00',
  ])
})

test('Rounded to cents, to five cents, to whole units', () => {
  // As a binary fraction 2.675 is less than it says; read as a decimal it is a tie.
  expect(roundTo('2.675', '0.01')).toBe('2.68')
  expect(roundTo('2.665', '0.01', 'half-even')).toBe('2.66')
  expect([roundTo('1.02', '0.05'), roundTo('1.03', '0.05'), roundTo('-1.5', '1')]).toEqual([
    '1.00',
    '1.05',
    '-2',
  ])
})

test('What is no plain decimal, and a step of nothing, are refused', () => {
  for (const text of ['1e3', '1,5', '', '.5', '1.2.3'])
    expect(() => readDecimal(text, 'price')).toThrow(
      expect.objectContaining({ code: 'decimal-bad', field: 'price' }),
    )
  expect(() => roundTo('1', '0')).toThrow(expect.objectContaining({ code: 'step-not-positive' }))
})
