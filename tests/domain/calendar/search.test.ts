import { expect, it } from 'vitest'
import { firstIndex } from '../../../main/domain/calendar/search.ts'

it('finds the first of every place there is, and the count where none passes', () => {
  for (let count = 0; count <= 33; count++)
    for (let first = 0; first <= count; first++) expect(firstIndex(count, i => i >= first)).toBe(first)
})

it('asks about seventeen of 100,000, and never one outside', () => {
  const asked: number[] = []
  firstIndex(100_000, i => asked.push(i) > 0 && i >= 70_000)
  expect(asked.length).toBeLessThanOrEqual(17)
  expect(Math.min(...asked)).toBeGreaterThanOrEqual(0)
  expect(Math.max(...asked)).toBeLessThan(100_000)
})
