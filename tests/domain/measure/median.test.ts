import { expect, it } from 'vitest'
import { median } from '../../../main/domain/measure/median.ts'

it.each([
  [[3], 3],
  [[9, 1], 5],
  [[9, 1, 2], 2],
  [[1, 100, 2, 3], 2.5],
  [[-5, -7, -6], -6],
])('the middle of %j is %d', (values, middle) => expect(median(values)).toBe(middle))

it('of nothing is no number, and what was asked about keeps its order', () => {
  expect(median([])).toBeNaN()
  const values = [3, 1, 2]
  median(values)
  expect(values).toEqual([3, 1, 2])
})
