import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkDigitOf } from '../../../main/domain/shelf/gtin.ts'
import { isGtin, readGtin } from '../../../main/domain/shelf/index.ts'

const digits = (length: number) => fc.stringMatching(new RegExp(`^\\d{${length}}$`))
const gtins = fc
  .constantFrom(7, 11, 12, 13)
  .chain(length => digits(length))
  .map(body => body + checkDigitOf(body))

// GS1 General Specifications, modulo 10 with weights 3 and 1 from the right; rule from memory. Prefix 952 is for examples.
describe('a GTIN', () => {
  it('has one check digit, and every single misread digit shows', () => {
    fc.assert(
      fc.property(gtins, fc.nat(13), fc.integer({ min: 1, max: 9 }), (code, at, by) => {
        const i = at % code.length
        const wrong = code.slice(0, i) + ((Number(code[i]) + by) % 10) + code.slice(i + 1)
        expect(isGtin(code)).toBe(true)
        expect(isGtin(wrong)).toBe(false)
      }),
    )
  })

  it('is one number in all its lengths', () => {
    fc.assert(
      fc.property(gtins, code => {
        const full = readGtin(code)
        expect(full).toHaveLength(14)
        expect(isGtin(full)).toBe(true)
        expect(readGtin(full)).toBe(full)
      }),
    )
    expect(readGtin('0 9521101 53000-1'.slice(2))).toBe(readGtin('9521101530001'))
  })

  it('is refused with the digit that would fit', () => {
    expect(() => readGtin('9521101530004')).toThrow(/should be 1/)
    expect(() => readGtin('952110153')).toThrow(/8, 12, 13 or 14 digits/)
    expect(() => readGtin('952110153000a')).toThrow(/not a GTIN/)
  })
})
