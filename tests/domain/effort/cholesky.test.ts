import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cholesky, solveBoth, solveLower } from '../../../main/domain/effort/cholesky.ts'

/** M Mᵀ + I of small whole numbers: symmetric and positive definite whatever is drawn. */
const matrices = fc.integer({ min: 1, max: 5 }).chain(n =>
  fc.record({
    matrix: fc
      .array(fc.array(fc.integer({ min: -4, max: 4 }), { minLength: n, maxLength: n }), {
        minLength: n,
        maxLength: n,
      })
      .map(m =>
        m.map((row, i) =>
          m.map((other, j) => row.reduce((sum, x, k) => sum + x * other[k]!, 0) + (i === j ? 1 : 0)),
        ),
      ),
    x: fc.array(fc.integer({ min: -9, max: 9 }), { minLength: n, maxLength: n }),
  }),
)
const times = (m: readonly (readonly number[])[], x: readonly number[]) =>
  m.map(row => row.reduce((sum, value, k) => sum + value * x[k]!, 0))

test('The factor of a matrix is lower triangular, and times itself turned over gives it back', () => {
  fc.assert(
    fc.property(matrices, ({ matrix }) => {
      const lower = cholesky(matrix)
      matrix.forEach((row, i) => {
        expect(lower[i]).toHaveLength(i + 1)
        row.forEach((value, j) => {
          const both = lower[i]!.reduce((sum, x, k) => sum + x * (lower[j]![k] ?? 0), 0)
          expect(both).toBeCloseTo(value, 8)
        })
      })
    }),
  )
})

test('Both systems give back the x that was put in', () => {
  fc.assert(
    fc.property(matrices, ({ matrix, x }) => {
      const lower = cholesky(matrix)
      const close = (found: number[]) => {
        for (const [i, value] of found.entries()) expect(value).toBeCloseTo(x[i]!, 6)
      }
      close(solveBoth(lower, times(matrix, x)))
      close(solveLower(lower, times(lower, x)))
    }),
  )
})
