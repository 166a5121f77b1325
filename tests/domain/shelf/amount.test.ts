import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { amountWords, centiOf, unitsOf } from '../../../main/domain/shelf/index.ts'

describe('amounts', () => {
  it('become whole hundredths and come back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e7 }), centi => {
        expect(centiOf(unitsOf(centi))).toBe(centi)
      }),
    )
    expect(Object.is(centiOf(-0.001), 0)).toBe(true)
  })

  it('read as people say them', () => {
    expect(amountWords(1250, 'ml')).toBe('12.5 ml')
    expect(amountWords(100, 'piece')).toBe('1 piece')
    expect(amountWords(4000, 'piece')).toBe('40 pieces')
    expect(amountWords(1251, 'g', 0)).toBe('13 g')
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e300, 100_000.01, -100_001])('refuse %d', amount => {
    expect(() => centiOf(amount)).toThrow(/not an amount/)
  })
})
