import { expect, test } from 'vitest'
import { randomFrom } from '../../../../main/domain/schedule/plan/random.ts'

const first = (seed: number, count: number) => {
  const next = randomFrom(seed)
  return Array.from({ length: count }, () => next())
}

test('numbers are the same for a seed, others for another, and lie from 0 up to 1', () => {
  expect(first(7, 50)).toEqual(first(7, 50))
  expect(first(7, 5)).not.toEqual(first(8, 5))
  for (const number of [0, 1, -1, 2 ** 31].flatMap(seed => first(seed, 1000))) {
    expect(number).toBeGreaterThanOrEqual(0)
    expect(number).toBeLessThan(1)
  }
})

test('they fall into tenths about evenly, also two behind each other', () => {
  const numbers = first(1, 20_000)
  const tenths = new Array<number>(10).fill(0)
  const pairs = new Array<number>(100).fill(0)
  numbers.forEach((number, i) => {
    tenths[Math.floor(number * 10)]! += 1
    if (i > 0) pairs[Math.floor(numbers[i - 1]! * 10) * 10 + Math.floor(number * 10)]! += 1
  })
  // Chi-square, 0.999 quantiles of 9 and 99 degrees of freedom (NIST Handbook, table 1.3.6.7.4): 27.9 and 148.2.
  const off = (counts: number[], wanted: number) =>
    counts.reduce((sum, count) => sum + (count - wanted) ** 2 / wanted, 0)
  expect(off(tenths, 2_000)).toBeLessThan(27.9)
  expect(off(pairs, 199.99)).toBeLessThan(148.2)
})
