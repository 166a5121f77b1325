import fc from 'fast-check'
import { expect, it } from 'vitest'
import { slipsBetween } from '../../../main/domain/search/editDistance.ts'

// The distance as its definition reads: the fewest steps over every way to line the two words up.
function slowly(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length
  const [restA, restB] = [a.slice(1), b.slice(1)]
  const ways = [1 + slowly(restA, b), 1 + slowly(a, restB), (a[0] === b[0] ? 0 : 1) + slowly(restA, restB)]
  if (a.length > 1 && b.length > 1 && a[0] === b[1] && a[1] === b[0])
    ways.push(1 + slowly(a.slice(2), b.slice(2)))
  return Math.min(...ways)
}

it.each([
  ['baker', 'bakre', 1],
  ['baker', 'aker', 1],
  ['baker', 'bakker', 1],
  ['baker', 'bager', 1],
  ['baker', 'bkaer', 1],
  ['thorolf', 'thorlof', 1],
  // No letter is touched twice: swapping and then putting one between counts three, not two (Damerau's own would be 2).
  ['ca', 'abc', 3],
] as const)('%s and %s are %i apart', (a, b, slips) => {
  expect(slipsBetween(a, b, 3)).toBe(slips)
  expect(slipsBetween(b, a, 3)).toBe(slips)
  expect(slipsBetween(a, b, slips - 1)).toBeNull()
})

it('is what every way to line the words up gives, or null above what is asked for', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 })
  fc.assert(
    fc.property(word, word, fc.integer({ min: 0, max: 4 }), (a, b, most) => {
      const slips = slowly(a, b)
      expect(slipsBetween(a, b, most)).toBe(slips <= most ? slips : null)
    }),
  )
})
