import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addPiece, envelope, noPieces, type Pieces } from '../../../main/domain/schedule/pieces.ts'

/** The highest value at each point, by looking at every piece. */
function highest(pieces: Pieces, k: number): number | undefined {
  let best: number | undefined
  for (let p = 0; p < pieces.from.length; p++) {
    if (k < pieces.from[p]! || k > pieces.to[p]!) continue
    const value = pieces.value[p]! + pieces.slope[p]! * (k - pieces.from[p]!)
    if (best === undefined || value > best) best = value
  }
  return best
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
        const raw = noPieces()
        for (const { from, length, value, sloped } of list)
          addPiece(raw, { from, to: from + length, value, slope: sloped ? slope : 0 })
        const out = noPieces()
        addPiece(out, { from: -1, to: -1, value: 7, slope: 0 })
        envelope(raw, out)
        for (let p = 1; p < out.from.length; p++) {
          expect(out.from[p]!).toBeGreaterThan(out.to[p - 1]!)
          expect(out.from[p]!).toBeLessThanOrEqual(out.to[p]!)
        }
        for (let k = 0; k <= 60; k++) expect(highest(out, k)).toBe(highest(raw, k))
      },
    ),
    { numRuns: 500 },
  )
})
