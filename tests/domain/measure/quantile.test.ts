import fc from 'fast-check'
import { expect, test } from 'vitest'
import { quantile } from '../../../main/domain/measure/quantile.ts'

test('is definition 7: the place is (n − 1) p, between two values in proportion', () => {
  // Hyndman and Fan, Sample Quantiles in Statistical Packages, The American Statistician 50 (1996): definition 7.
  expect(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.25)).toBe(3.25)
  expect(quantile([10, 2, 4, 9, 3, 7, 8, 1, 6, 5], 0.9)).toBeCloseTo(9.1, 12)
  expect(quantile([3, 1, 2], 0.5)).toBe(2)
  expect(quantile([7], 0.3)).toBe(7)
})

test('goes from the least to the most and never falls', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 20 })
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(values, share, share, (list, p, q) => {
      expect(quantile(list, 0)).toBe(Math.min(...list))
      expect(quantile(list, 1)).toBe(Math.max(...list))
      expect(quantile(list, Math.min(p, q))).toBeLessThanOrEqual(quantile(list, Math.max(p, q)) + 1e-9)
    }),
  )
})

test('refuses what is no share, no value or no number', () => {
  for (const p of [-0.01, 1.01, Number.NaN])
    expect(() => quantile([1], p)).toThrow(expect.objectContaining({ code: 'share-bad' }))
  expect(() => quantile([], 0.5)).toThrow(expect.objectContaining({ code: 'too-few' }))
  expect(() => quantile([1, Number.NaN], 0.5)).toThrow(
    expect.objectContaining({ code: 'reading-bad', field: 'values.1' }),
  )
})
