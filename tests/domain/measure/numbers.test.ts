import { expect, test } from 'vitest'
import { checkNumber, checkNumbers, checkPositive } from '../../../main/domain/measure/numbers.ts'

test('numbers as large as a billion thousand are readings, larger or endless ones are none', () => {
  expect([1e12, -1e12, 0].map(value => checkNumber(value, 'value'))).toEqual([1e12, -1e12, 0])
  for (const value of [1.001e12, -1.001e12, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => checkNumber(value, 'value')).toThrow(
      expect.objectContaining({ code: 'reading-bad', field: 'value' }),
    )
})

test('of a list the one that is no number is named', () => {
  expect(() => checkNumbers([1, 2], 'values')).not.toThrow()
  expect(() => checkNumbers([1, Number.NaN], 'values')).toThrow(
    expect.objectContaining({ field: 'values.1' }),
  )
})

test('where it must be more than 0, 0 is refused in words that say what it is', () => {
  expect(checkPositive(0.001, 'value', 'The repeatability')).toBe(0.001)
  for (const value of [0, -1])
    expect(() => checkPositive(value, 'value', 'The repeatability')).toThrow(
      `The repeatability is ${value === 0 ? 0 : '-1'}; give a number above 0.`,
    )
})
