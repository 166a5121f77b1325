import { expect, test } from 'vitest'
import { numberRemedy, readNumber } from '../../../app/parts/numberText.ts'

test.each([
  ['12', {}, 12],
  [' 0,5 ', {}, 0.5],
  ['−3', { least: -50 }, -3],
  ['14', { most: 14 }, 14],
  ['3', { whole: true }, 3],
])('%j is read with %j', (text, limits, value) => {
  expect(readNumber(text, limits)).toBe(value)
})

// 2006381333933 is what a scanner types into a field that has the focus; the rest is what a computer calls a number.
test.each([
  ['1e308', {}],
  ['1e3', {}],
  ['Infinity', {}],
  ['0x10', {}],
  ['2006381333933', { most: 1e15 }],
  ['', {}],
  ['1,000.5', {}],
  ['-1', {}],
  ['15', { most: 14 }],
  ['1000001', {}],
  ['2.5', { whole: true }],
])('%j is refused with %j', (text, limits) => {
  expect(readNumber(text, limits)).toBeUndefined()
})

test('the remedy names the limits', () => {
  expect(numberRemedy({ most: 14 })).toBe('Write a number from 0 to 14.')
  expect(numberRemedy({ least: 1, most: 65_535, whole: true })).toBe('Write a whole number from 1 to 65,535.')
})
