import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkFactors, STARTING_FACTORS } from '../../../../main/domain/upkeep/exposure/factors.ts'
import { intervalWords, LIMITS, scaleInterval } from '../../../../main/domain/upkeep/exposure/interval.ts'

const exposure = fc.record(
  Object.fromEntries(
    STARTING_FACTORS.map(factor => [factor.id, fc.constantFrom(...factor.choices.map(one => one.id))]),
  ),
  { requiredKeys: [] },
) as fc.Arbitrary<Record<string, string>>

describe('a topper interval scaled to a car', () => {
  it('is the product of the chosen factors, every one shown and marked', () => {
    const scaled = scaleInterval(180, { kept: 'outside', wash: 'brush', climate: 'mild' }, STARTING_FACTORS)
    expect(scaled.days).toBe(Math.round(180 * 0.85 * 0.8))
    expect(scaled.steps.map(step => [step.factorId, step.multiplier, step.mark])).toEqual([
      ['kept', 0.85, 'rule of thumb'],
      ['distance', 1, 'rule of thumb'],
      ['climate', 1, 'rule of thumb'],
      ['wash', 0.8, 'rule of thumb'],
      ['washed', 1, 'rule of thumb'],
    ])
    expect(scaled).toMatchObject({ held: false, exposureClass: 'harsh' })
    expect(intervalWords(180, scaled)).toBe(
      "122 days: the product's 180, by rule of thumb for where it stands at night: outside (× 0.85); " +
        'how it is washed: in a brush tunnel (× 0.8).',
    )
  })

  it('is the product interval where nothing is known or nothing matters', () => {
    expect(scaleInterval(180, {}, STARTING_FACTORS)).toMatchObject({
      days: 180,
      multiplier: 1,
      exposureClass: 'ordinary',
    })
    expect(intervalWords(180, scaleInterval(180, { climate: 'mild' }, STARTING_FACTORS))).toContain(
      'unchanged',
    )
  })

  it('never leaves its limits, and says when it was held there', () => {
    fc.assert(
      fc.property(exposure, fc.integer({ min: 1, max: 2000 }), (chosen, days) => {
        const scaled = scaleInterval(days, chosen, STARTING_FACTORS)
        const product = scaled.steps.reduce((all, step) => all * step.multiplier, 1)
        expect(scaled.multiplier).toBeGreaterThanOrEqual(LIMITS.least)
        expect(scaled.multiplier).toBeLessThanOrEqual(LIMITS.most)
        expect(scaled.held).toBe(product < LIMITS.least || product > LIMITS.most)
        if (!scaled.held) expect(scaled.multiplier).toBeCloseTo(product, 12)
        expect(Math.abs(scaled.days - days * scaled.multiplier)).toBeLessThanOrEqual(1)
      }),
    )
    const worst = { kept: 'outside', distance: 'very-high', climate: 'salt', wash: 'brush', washed: 'seldom' }
    const held = scaleInterval(200, worst, STARTING_FACTORS)
    expect(held).toMatchObject({ days: 100, held: true })
    expect(intervalWords(200, held)).toContain('limited to × 0.5')
  })

  it('takes the figures of the shop, and marks them so', () => {
    const own = STARTING_FACTORS.map(factor =>
      factor.id === 'kept'
        ? {
            ...factor,
            mark: 'set by the shop' as const,
            choices: [{ id: 'garage', label: 'in a garage', multiplier: 1.3 }],
          }
        : factor,
    )
    checkFactors(own)
    const scaled = scaleInterval(100, { kept: 'garage' }, own)
    expect(scaled).toMatchObject({ days: 130, exposureClass: 'gentle' })
    expect(scaled.steps[0]).toMatchObject({ mark: 'set by the shop' })
  })

  it('refuses what it cannot use', () => {
    expect(() => scaleInterval(0, {}, STARTING_FACTORS)).toThrow(
      expect.objectContaining({ code: 'interval-bad' }),
    )
    expect(() => scaleInterval(180, { kept: 'cave' }, STARTING_FACTORS)).toThrow(
      expect.objectContaining({ code: 'choice-unknown', field: 'exposure.kept' }),
    )
    const [kept] = STARTING_FACTORS
    const [garage] = kept!.choices
    expect(() => checkFactors([kept!, kept!])).toThrow(expect.objectContaining({ code: 'factor-twice' }))
    expect(() => checkFactors([{ ...kept!, choices: [] }])).toThrow(
      expect.objectContaining({ code: 'factor-empty' }),
    )
    expect(() => checkFactors([{ ...kept!, choices: [garage!, garage!] }])).toThrow(
      expect.objectContaining({ code: 'choice-twice' }),
    )
    expect(() => checkFactors([{ ...kept!, choices: [{ ...garage!, multiplier: 0 }] }])).toThrow(
      expect.objectContaining({ field: 'factors.0.choices.0.multiplier' }),
    )
  })
})
