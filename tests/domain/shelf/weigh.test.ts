import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contentByWeight } from '../../../main/domain/shelf/index.ts'
import { veilTen } from './veilTen.ts'

describe('weighing', () => {
  it('turns grams into millilitres by density, and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 100_000 }),
        (densityGPerMl, centi) => {
          const grams = (centi / 100) * densityGPerMl
          const weighed = { unit: 'ml' as const, densityGPerMl }
          expect(contentByWeight(grams + 42, 42, weighed)).toBe(centi)
        },
      ),
    )
    expect(contentByWeight(500, 460.5, { unit: 'g', densityGPerMl: null })).toBe(3950)
  })

  it.each([
    [() => contentByWeight(100, -1, veilTen), 'weight-bad'],
    [() => contentByWeight(100, 90, { unit: 'ml', densityGPerMl: null }), 'density-missing'],
    [() => contentByWeight(100, 90, { unit: 'piece', densityGPerMl: 1 }), 'not-weighed'],
    [() => contentByWeight(40, 42, veilTen), 'lighter-than-empty'],
  ])('refuses what makes no sense: %#', (weigh, code) => {
    expect(weigh).toThrow(expect.objectContaining({ code }))
  })
})
