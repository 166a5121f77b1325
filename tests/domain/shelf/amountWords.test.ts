import fc from 'fast-check'
import { describe, expect, it as plainly } from 'vitest'
import {
  amountText,
  amountUnit,
  amountWords,
  comparedBy,
  keptAmount,
  shownAmount,
  weightWords,
} from '../../../main/domain/shelf/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

/** A test of a shop that measures in US units. */
const it = (name: string, work: () => void) =>
  plainly(name, () => speaking('en', work, { country: 'US', units: 'us' }))

describe('where the shop measures in US units', () => {
  it('writes fluid ounces and ounces, as fine as somebody can pour', () => {
    // Source: NIST Handbook 44 (2024), appendix C: 1 US fluid ounce = 29.573 53 mL, 1 gallon = 3.785 412 L,
    // 1 avoirdupois ounce = 28.349 52 g, 1 pound = 453.592 37 g.
    expect(shownAmount(29.5735295625, 'ml')).toBeCloseTo(1, 12)
    expect(shownAmount(28.349523125, 'g')).toBeCloseTo(1, 12)
    expect(amountWords(50_000, 'ml', 0)).toBe('16.9 fl oz')
    expect(amountWords(5_000, 'ml')).toBe('1.69 fl oz')
    expect(amountWords(400_000, 'ml', 0)).toBe('135 fl oz')
    expect(amountWords(10_000, 'g', 0)).toBe('3.5 oz')
    expect(weightWords(812)).toBe('28.64 oz')
    expect(amountText(3_785.411784, 'ml')).toBe('1 gal')
    expect(amountText(14_700, 'ml')).toBe('3.88 gal')
    expect(amountText(1_000, 'g')).toBe('2.2 lb')
    expect(amountText(3_785, 'ml')).toBe('128 fl oz')
    expect([14.786765, 473.17648, 500].map(ml => amountText(ml, 'ml'))).toEqual([
      '0.5 fl oz',
      '16 fl oz',
      '16.9 fl oz',
    ])
  })

  it('never writes something as nothing', () => {
    expect(amountWords(100, 'ml', 0)).toBe('0.03 fl oz')
    expect(amountWords(0, 'ml', 0)).toBe('0 fl oz')
  })

  it('compares prices by one of what is shown: 100 ml for $10 are $2.96 a fluid ounce', () => {
    const { words, hundreds } = comparedBy('ml')
    expect(words).toBe('1 fl oz')
    expect(Math.round(1_000 * hundreds)).toBe(296)
    expect(comparedBy('piece')).toEqual({ words: '100 pieces', hundreds: 1 })
  })

  it('keeps what was typed to a hundredth, and shows it again as it was typed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300_000 }),
        fc.constantFrom('ml' as const, 'g' as const),
        (n, unit) => {
          const typed = n / 100
          expect(Math.round(shownAmount(keptAmount(typed, unit), unit) * 100) / 100).toBe(typed)
        },
      ),
    )
  })

  it('counts pieces as everywhere', () => {
    expect(amountWords(300, 'piece')).toBe('3 pieces')
    expect(amountUnit('piece')).toBeNull()
    expect(keptAmount(3, 'piece')).toBe(3)
    expect(amountText(5_000, 'piece')).toBe('5000 pieces')
  })
})

plainly('elsewhere amounts stay millilitres and grams, litres and kilograms', () => {
  expect(amountWords(1_250, 'ml')).toBe('12.5 ml')
  expect(amountUnit('g')).toBe('g')
  expect(keptAmount(12.5, 'ml')).toBe(12.5)
  expect(comparedBy('g')).toEqual({ words: '100 g', hundreds: 1 })
})

plainly.each([
  [2.5, 'ml', '2.5 ml'],
  [250, 'ml', '250 ml'],
  [550.34, 'ml', '550 ml'],
  [2.54, 'ml', '2.5 ml'],
  [999.4, 'ml', '999 ml'],
  [1500, 'ml', '1.5 l'],
  [3785.411784, 'ml', '3.79 l'],
  [3416.68, 'g', '3.42 kg'],
  [14_734, 'ml', '14.7 l'],
  [-1000, 'ml', '-1 l'],
  [-2.3, 'ml', '-2.3 ml'],
  [14.4, 'piece', '14 pieces'],
  [1, 'piece', '1 piece'],
] as const)('at a glance %d %s is %s', (amount, unit, words) => {
  expect(amountText(amount, unit)).toBe(words)
})
