import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { monotoneCurve } from '../../../main/domain/cure/monotoneCurve.ts'
import reference from '../../reference/monotoneCurve.json' with { type: 'json' }

const risingPoints = fc
  .array(
    fc.record({
      dx: fc.double({ min: 0.01, max: 1000, noNaN: true }),
      dy: fc.double({ min: 1e-3, max: 10, noNaN: true }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map(steps => {
    const points = [{ x: 0, y: 0 }]
    for (const { dx, dy } of steps) points.push({ x: points.at(-1)!.x + dx, y: points.at(-1)!.y + dy })
    return points
  })

describe('the monotone curve', () => {
  it.each(reference.cases.map(given => [given.id, given] as const))('%s agrees with SciPy', (_, given) => {
    const { x, y, at } = given.input
    const curve = monotoneCurve(x.map((value, i) => ({ x: value, y: y[i]! })))
    at.forEach((value, i) => {
      expect(Math.abs(curve.at(value) - given.expected.values[i]!)).toBeLessThan(1e-10)
    })
  })

  it('runs through its points, never falls, and its inverse finds the way back', () => {
    fc.assert(
      fc.property(risingPoints, fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (points, shares) => {
        const curve = monotoneCurve(points)
        for (const { x, y } of points) expect(curve.at(x)).toBeCloseTo(y, 9)
        const { x: end, y: top } = points.at(-1)!
        const values = shares.sort((a, b) => a - b).map(share => curve.at(share * end))
        values.forEach((value, i) => {
          expect(value).toBeGreaterThanOrEqual((values[i - 1] ?? 0) - 1e-12)
        })
        for (const share of shares) expect(curve.at(curve.inverse(share * top))).toBeCloseTo(share * top, 9)
      }),
    )
  })

  it('stays at its ends outside them', () => {
    const curve = monotoneCurve([
      { x: 1, y: 2 },
      { x: 2, y: 5 },
    ])
    expect([curve.at(0), curve.at(9), curve.inverse(0), curve.inverse(9)]).toEqual([2, 5, 1, 2])
  })
})
