import { expect, test } from 'vitest'
import { farOut, medianDeviation, robustSpread } from '../../../main/domain/measure/robust.ts'

// NIST/SEMATECH e-Handbook 1.3.5.17, by hand: the distances to the middle 3 are 2, 1, 0, 1 and 97.
test('One wild reading moves neither the spread nor the others', () => {
  const readings = [1, 2, 3, 4, 100]
  expect(medianDeviation(readings)).toBe(1)
  expect(robustSpread(readings)).toBeCloseTo(1.4826, 4)
  expect(farOut(readings)).toEqual([false, false, false, false, true])
})

test('Where most are equal the mean deviation stands in', () => {
  // Distances 0, 0, 0, 0 and 4: mean 0.8.
  expect(robustSpread([5, 5, 5, 5, 9])).toBeCloseTo(1.2533 * 0.8, 10)
  expect([robustSpread([5, 5, 5]), robustSpread([])]).toEqual([0, 0])
  expect(farOut([5, 5, 5])).toEqual([false, false, false])
})
