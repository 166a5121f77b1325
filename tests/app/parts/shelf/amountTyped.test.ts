import { describe, expect, it } from 'vitest'
import { amountRemedy, amountShown, readAmount } from '../../../../app/parts/shelf/amountTyped.ts'
import { speaking } from '../../../../main/services/desk/speaking.ts'

const inUs = (work: () => void) => speaking('en', work, { country: 'US', units: 'us' })

describe('an amount as it is typed', () => {
  it('counts in the shop’s measure where no unit is named', () => {
    expect(readAmount('250', 'ml', {})).toBe(250)
    inUs(() => {
      // 8 × 29.573 529 562 5 (NIST Handbook 44, appendix C).
      expect(readAmount('8', 'ml', {})).toBe(236.59)
      expect(amountShown(236.59, 'ml')).toBe('8')
    })
    expect(readAmount('3', 'piece', {})).toBe(3)
  })

  it('takes the unit that is typed behind it, in a shop of either measure', () => {
    const either = () => {
      expect(readAmount('8 fl oz', 'ml', {})).toBe(236.59)
      expect(readAmount('8 fl. oz.', 'ml', {})).toBe(236.59)
      expect(readAmount('8oz', 'ml', {})).toBe(236.59)
      expect(readAmount('250 ml', 'ml', {})).toBe(250)
      expect(readAmount('0.5 L', 'ml', {})).toBe(500)
      expect(readAmount('1 gal', 'ml', {})).toBe(3_785.41)
      expect(readAmount('2 lb', 'g', {})).toBe(907.18)
      expect(readAmount('1,5 kg', 'g', {})).toBe(1_500)
    }
    either()
    inUs(either)
  })

  it('takes no weight for a liquid, no unit of pieces, and no word', () => {
    expect(readAmount('2 lb', 'ml', {})).toBeUndefined()
    expect(readAmount('2 ml', 'piece', {})).toBeUndefined()
    expect(readAmount('a bit', 'ml', {})).toBeUndefined()
    expect(readAmount('1e8', 'ml', {})).toBeUndefined()
    expect(readAmount('', 'ml', {})).toBeUndefined()
  })

  it('keeps to limits of the kept unit, and says them in the shown one', () => {
    inUs(() => {
      expect(readAmount('40', 'ml', { most: 1_000 })).toBeUndefined()
      expect(readAmount('33', 'ml', { most: 1_000 })).toBe(975.93)
      expect(amountRemedy('ml', { least: 10, most: 1_000 })).toBe('Write a number from 0.34 to 33.')
    })
    expect(readAmount('-1', 'ml', {})).toBeUndefined()
  })
})
