import { expect, test } from 'vitest'
import type { Demand } from '../../../main/domain/shelf/demand.ts'
import { useAhead } from '../../../main/domain/shelf/useAhead.ts'

/** Nothing, then one cell with a chance of a half, then one for certain or two. */
const demand = {
  stepCenti: 50,
  ahead: [Float64Array.of(1), Float64Array.of(0.5, 0.5), Float64Array.of(0, 0.5, 0.5)],
  aheadMeanCenti: [0, 25, 75],
} as object as Demand

test('beyond the days looked ahead the last day’s use goes on, in mean', () => {
  expect(useAhead(demand, 4).meanCenti).toEqual([0, 25, 75, 125, 175])
  expect(useAhead(demand, 1).meanCenti).toEqual([0, 25])
})

test('and in variance, which never shrinks behind', () => {
  // A fair coin of one cell of 50 has a variance of 0.25 × 2500.
  expect(useAhead(demand, 4).variance).toEqual([0, 625, 625, 625, 625])
  const shrinking = { ...demand, ahead: [Float64Array.of(1), Float64Array.of(0.5, 0.5), Float64Array.of(1)] }
  expect(useAhead(shrinking, 3).variance).toEqual([0, 625, 0, 0])
})
