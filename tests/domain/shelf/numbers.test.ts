import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  amountWords,
  centiOf,
  dateOfDay,
  dayNumber,
  unitsOf,
  weekdayOf,
} from '../../../main/domain/shelf/index.ts'
import {
  normalDensity,
  normalLoss,
  normalQuantile,
  normalShare,
  normalTail,
} from '../../../main/domain/shelf/normal.ts'

describe('day numbers', () => {
  it('agree with Temporal over all centuries', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500_000, max: 2_000_000 }), day => {
        const date = dateOfDay(day)
        const plain = Temporal.PlainDate.from(date)
        expect(Temporal.PlainDate.from('1970-01-01').until(plain).days).toBe(day)
        expect(dayNumber(date)).toBe(day)
        expect(weekdayOf(day)).toBe(plain.dayOfWeek)
      }),
    )
  })

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '26-01-01', '2026-1-1', 'soon', ''])(
    'refuse %j',
    text => {
      expect(() => dayNumber(text)).toThrow(/not a date/)
    },
  )
})

describe('amounts', () => {
  it('become whole hundredths and come back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e7 }), centi => {
        expect(centiOf(unitsOf(centi))).toBe(centi)
      }),
    )
    expect(Object.is(centiOf(-0.001), 0)).toBe(true)
  })

  it('read as people say them', () => {
    expect(amountWords(1250, 'ml')).toBe('12.5 ml')
    expect(amountWords(100, 'piece')).toBe('1 piece')
    expect(amountWords(4000, 'piece')).toBe('40 pieces')
    expect(amountWords(1251, 'g', 0)).toBe('13 g')
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e300, 100_000.01, -100_001])('refuse %d', amount => {
    expect(() => centiOf(amount)).toThrow(/not an amount/)
  })
})

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
    for (const z of [-3, -0.4, 0, 0.9, 2.9, 3.1, 5]) {
      const h = 1e-4
      const slope = (normalLoss(z + h) - normalLoss(z - h)) / (2 * h)
      expect(slope / -normalTail(z)).toBeCloseTo(1, 4)
    }
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
