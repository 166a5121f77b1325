import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkDigitOf } from '../../../main/domain/shelf/gtin.ts'
import { isGtin, readGtin, readScan } from '../../../main/domain/shelf/index.ts'

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

describe('a scan', () => {
  const gs = '\u001d'

  it('gives the GTIN, expiry and batch of a long code', () => {
    const wanted = { gtin: '09521101530001', expiresOn: '2027-06-30', batch: 'B7-12' }
    expect(readScan(`]C10109521101530001172706301${'0B7-12'}`, 2026)).toMatchObject(wanted)
    expect(readScan(`]d2${gs}0109521101530001${'10B7-12'}${gs}17270630`, 2026)).toMatchObject(wanted)
    expect(readScan('010952110153000117270600', 2026).expiresOn).toBe('2027-06-30')
    expect(readScan('010952110153000115280229', 2026).expiresOn).toBe('2028-02-29')
  })

  it('puts a two-digit year into the nearer century', () => {
    const year = (digits2: string, now: number) => readScan(`010952110153000117${digits2}0101`, now).expiresOn
    expect(year('76', 2026)).toBe('2076-01-01')
    expect(year('77', 2026)).toBe('1977-01-01')
    expect(year('02', 2095)).toBe('2102-01-01')
  })

  it('takes a plain code, and leaves what it does not know as text', () => {
    expect(readScan(' ]E09521101530001\n', 2026)).toMatchObject({ gtin: '09521101530001', batch: null })
    for (const text of ['SHELF-4', '0109521101530004', '01095211015300011727063', '010952110153000117271332'])
      expect(readScan(text, 2026)).toMatchObject({ text, expiresOn: null })
    expect(readScan('SHELF-4', 2026).gtin).toBeNull()
  })

  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789]AC', gs) }), text => {
        expect(readScan(text, 2026).text).toBe(text.trim())
      }),
    )
  })
})
