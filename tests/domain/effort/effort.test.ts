// Bayesian linear regression: Gelman et al., Bayesian Data Analysis, chapter 14 (from memory). Whether its quantiles cover
// their share on simulated shops is measured by `npm run bench -- intake`.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cholesky, solveBoth } from '../../../main/domain/effort/cholesky.ts'
import {
  effortFactor,
  type FinishedVisit,
  learnEffort,
  mostLearned,
  type Visit,
} from '../../../main/domain/effort/index.ts'

const visit = (part: Partial<FinishedVisit> = {}): FinishedVisit => ({
  sizeClass: 'medium',
  condition: 'good',
  share: 1,
  severity: 0,
  correction: 0.5,
  who: 'Ada',
  plannedMin: 240,
  realMin: 240,
  ...part,
})
const many = (count: number, part: Partial<FinishedVisit> = {}) =>
  Array.from({ length: count }, () => visit(part))

const visits = fc.array(
  fc.record({
    sizeClass: fc.constantFrom('small', 'medium', 'large'),
    condition: fc.constantFrom('good', 'worn', 'heavy'),
    share: fc.constantFrom(1, 0.35),
    severity: fc.double({ min: 0, max: 4, noNaN: true }),
    correction: fc.double({ min: 0, max: 1, noNaN: true }),
    who: fc.constantFrom('Ada', 'Bo', null),
    plannedMin: fc.integer({ min: 15, max: 1000 }),
    realMin: fc.integer({ min: 15, max: 1500 }),
  }),
  { maxLength: 25 },
)

describe('what work really takes', () => {
  it('is what the shop wrote while nobody knows better, and unsure', () => {
    const effort = learnEffort([])
    expect(effortFactor(effort, visit(), 0.5)).toBeCloseTo(1, 6)
    expect(effortFactor(effort, visit(), 0.8)).toBeGreaterThan(1.3)
  })

  it('moves toward what is seen, the more the more often, and is surer of it', () => {
    const factors = [2, 10, 60].map(count => learnEffort(many(count, { realMin: 300 })))
    const medians = factors.map(effort => effortFactor(effort, visit(), 0.5))
    expect(medians).toEqual([...medians].sort((a, b) => a - b))
    expect(medians[0]).toBeGreaterThan(1.1)
    expect(medians[2]).toBeCloseTo(1.25, 2)
    const spread = factors.map(
      effort => effortFactor(effort, visit(), 0.9) / effortFactor(effort, visit(), 0.5),
    )
    expect(spread).toEqual([...spread].sort((a, b) => b - a))
  })

  it('tells a quick hand from a slow one, and promises for whoever may do it in between', () => {
    const effort = learnEffort([...many(30, { realMin: 200 }), ...many(30, { who: 'Bo', realMin: 320 })])
    const by = (who: string | null) => effortFactor(effort, visit({ who }), 0.5)
    expect(by('Ada')).toBeLessThan(0.95)
    expect(by('Bo')).toBeGreaterThan(1.2)
    expect(by(null)).toBeGreaterThan(by('Ada'))
    expect(by(null)).toBeLessThan(by('Bo'))
    // A stranger may be either: surely no surer than of those it knows.
    expect(effortFactor(effort, visit({ who: 'Cy' }), 0.9)).toBeGreaterThan(
      effortFactor(effort, visit({ who: 'Ada' }), 0.9),
    )
  })

  it('learns what condition costs beside who did it', () => {
    const effort = learnEffort([...many(40), ...many(40, { condition: 'heavy', realMin: 300 })])
    const heavy: Visit = visit({ condition: 'heavy' })
    expect(effortFactor(effort, heavy, 0.5) / effortFactor(effort, visit(), 0.5)).toBeCloseTo(1.25, 1)
  })

  it('rises with the share that is to hold, stays in bounds, and asks for no order of the visits', () => {
    const share = fc.double({ min: 0.05, max: 0.95, noNaN: true })
    fc.assert(
      fc.property(visits, share, share, (all, p, q) => {
        const effort = learnEffort(all)
        const [low, high] = [
          effortFactor(effort, visit(), Math.min(p, q)),
          effortFactor(effort, visit(), Math.max(p, q)),
        ]
        expect(low).toBeGreaterThanOrEqual(0.4 - 1e-9)
        expect(high).toBeGreaterThanOrEqual(low - 1e-9)
        expect(high).toBeLessThanOrEqual(3 + 1e-9)
        expect(effortFactor(learnEffort([...all].reverse()), visit(), p)).toBeCloseTo(
          effortFactor(effort, visit(), p),
          6,
        )
      }),
    )
  })

  it('forgets what is older than the last 400, and refuses what was no visit', () => {
    const effort = learnEffort([...many(50, { realMin: 1000 }), ...many(mostLearned)])
    expect(effort.visits).toBe(mostLearned)
    expect(effortFactor(effort, visit(), 0.5)).toBeCloseTo(1, 2)
    expect(() => learnEffort([visit({ realMin: 0 })])).toThrow(
      expect.objectContaining({ code: 'visit-bad', field: 'visits.0' }),
    )
    expect(() => learnEffort([visit({ share: 0 })])).toThrow(expect.objectContaining({ code: 'visit-bad' }))
    expect(() => effortFactor(effort, visit(), 1)).toThrow(
      expect.objectContaining({ code: 'share-bad', field: 'p' }),
    )
  })
})

it('a system is solved: what is put in comes out again', () => {
  const entries = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 4, maxLength: 4 })
  fc.assert(
    fc.property(fc.array(entries, { minLength: 4, maxLength: 4 }), entries, (rows, x) => {
      // Aᵀ A + I is positive definite whatever A is.
      const matrix = rows.map((_, i) =>
        rows.map((_, j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, i === j ? 1 : 0)),
      )
      const b = matrix.map(row => row.reduce((sum, value, k) => sum + value * x[k]!, 0))
      const found = solveBoth(cholesky(matrix), b)
      for (const [i, value] of found.entries()) expect(value).toBeCloseTo(x[i]!, 6)
    }),
  )
})
