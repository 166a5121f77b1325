import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addPart, envelope, type Piece } from '../../../main/domain/schedule/pieces.ts'

/** The highest value at each point, by looking at every piece. */
function highest(pieces: readonly Piece[], k: number): number | undefined {
  const values = pieces
    .filter(({ from, to }) => from <= k && k <= to)
    .map(({ from, value, slope }) => value + slope * (k - from))
  return values.length > 0 ? Math.max(...values) : undefined
}

test('the envelope is the highest piece at every point, and its own pieces never overlap', () => {
  const piece = fc.record({
    from: fc.integer({ min: 0, max: 40 }),
    length: fc.integer({ min: 0, max: 20 }),
    value: fc.integer({ min: -50, max: 50 }),
    sloped: fc.boolean(),
  })
  fc.assert(
    fc.property(
      fc.array(piece, { minLength: 1, maxLength: 40 }),
      fc.constantFrom(-3, -1, 1, 4),
      (list, slope) => {
        const raw = list.map(
          ({ from, length, value, sloped }): Piece => ({
            from,
            to: from + length,
            value,
            slope: sloped ? slope : 0,
            length: 0,
          }),
        )
        const out = envelope(raw)
        out.forEach(({ from, to }, p) => {
          expect(from).toBeGreaterThan(out[p - 1]?.to ?? -1)
          expect(from).toBeLessThanOrEqual(to)
        })
        for (let k = 0; k <= 60; k++) expect(highest(out, k)).toBe(highest(raw, k))
      },
    ),
    { numRuns: 500 },
  )
})

test('A part keeps what the piece says at its points, less the cost; outside the piece there is none', () => {
  const piece: Piece = { from: 10, to: 20, value: 100, slope: 3, length: 60 }
  const out: Piece[] = []
  addPart(out, piece, 12, 15, 5)
  addPart(out, piece, 0, 11, 0, 30)
  addPart(out, piece, 21, 30)
  addPart(out, piece, 0, 9)
  // By hand: at 12 the piece says 100 + 2 * 3.
  expect(out).toEqual([
    { from: 12, to: 15, value: 101, slope: 3, length: 60 },
    { from: 10, to: 11, value: 100, slope: 3, length: 30 },
  ])
})
