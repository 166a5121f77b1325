import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  normalDensity,
  normalLoss,
  normalQuantile,
  normalShare,
  normalTail,
} from '../../../main/domain/shelf/normal.ts'

describe('the normal distribution', () => {
  it('has a quantile that is the inverse of its share, far into both tails', () => {
    fc.assert(
      fc.property(fc.double({ min: -37, max: 37, noNaN: true }), z => {
        const back = z < 0 ? normalQuantile(normalShare(z)) : -normalQuantile(normalTail(z))
        expect(Math.abs(back - z)).toBeLessThan(1e-7)
      }),
    )
  })

  it('has a loss whose slope is minus its tail', () => {
    for (const z of [-3, -0.4, 0, 0.9, 2.9, 3.1, 5, 7.99, 8.01, 9]) {
      const h = 1e-4
      const slope = (normalLoss(z + h) - normalLoss(z - h)) / (2 * h)
      expect(slope / -normalTail(z)).toBeCloseTo(1, 4)
    }
  })

  // Computed with 60 decimal digits from L(z) = density(z) - z * tail(z); the definition: NIST/SEMATECH e-Handbook 1.3.6.6.1.
  it.each([
    [3.5, 5.848091842142244e-5],
    [5, 5.346165533832815e-8],
    [7.9, 1.712707557436171e-16],
    [8.000001, 7.55020020259337e-17],
    [8.5, 1.0863103279672944e-18],
    [12, 1.4605201169845548e-34],
    [20, 1.37001249472958e-90],
    [37, 1.545199190512203e-301],
  ])('has a loss of its true value at %d', (z, loss) => {
    expect(normalLoss(z) / loss - 1).toBeCloseTo(0, 10)
    // L(-z) = L(z) + z, since the two tails make one.
    expect(normalLoss(-z)).toBeCloseTo(loss + z, 12)
  })

  it('has a density that its share integrates, across the seam of the two methods', () => {
    let sum = normalShare(-6)
    for (let i = 0; i < 12_000; i++) sum += normalDensity(-6 + (i + 0.5) / 1000) / 1000
    expect(sum).toBeCloseTo(normalShare(6), 8)
    expect(normalTail(3)).toBeCloseTo(normalTail(3 + 1e-9), 10)
  })

  it.each([0, 1, -0.5, Number.NaN])('has no quantile of %d', p => {
    expect(() => normalQuantile(p)).toThrow(/between 0 and 1/)
  })
})
