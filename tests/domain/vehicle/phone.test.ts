// ITU-T E.164. Numbers reserved for fiction, from memory.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parsePhone, readPhone, showPhone } from '../../../main/domain/vehicle/index.ts'
import { type Case, runCases } from '../../reference/cases.ts'

runCases(
  'communications',
  [
    [/^phone-/, 'phone'],
    [/./, 'elsewhere'],
  ] as const,
  {
    phone: (entry: Case<{ raw: string; region: string }, { e164: string | null; extension?: string }>) => {
      const phone = parsePhone(entry.input.raw, entry.input.region)
      expect(phone?.e164 ?? null).toBe(entry.expected.e164)
      expect(phone?.extension ?? undefined).toBe(entry.expected.extension)
    },
  },
)

describe('phone numbers', () => {
  it('are shown nationally at home and internationally abroad', () => {
    expect(showPhone('+12125550123', 'US')).toBe('(212) 555-0123')
    expect(showPhone('+12125550123', 'CA')).toBe('(212) 555-0123')
    expect(showPhone('+12125550123', 'GB')).toBe('+1 212 555 0123')
    expect(showPhone('+442079460018', 'GB')).toBe('020 7946 0018')
    expect(showPhone('not a number', 'GB')).toBe('not a number')
  })

  it('are the same number again when read back from how they are shown', () => {
    const line = fc.integer({ min: 100, max: 199 }).map(n => `0${n}`)
    const area = fc.constantFrom('212', '303', '415', '646')
    fc.assert(
      fc.property(area, line, fc.constantFrom('US', 'CA', 'GB', 'DE'), (code, last, region) => {
        const e164 = `+1${code}555${last}`
        expect(parsePhone(showPhone(e164, region), region)?.e164).toBe(e164)
      }),
    )
  })

  it('never written to a range that exists are kept, with the doubt said', () => {
    expect(parsePhone('(212) 555-0123', 'US')?.assigned).toBe(true)
    expect(parsePhone('07700 900 982', 'GB')?.assigned).toBe(false)
  })

  it('that are none are refused with the field named', () => {
    expect(() => readPhone('call me', 'US', 'customer.phone')).toThrow(
      expect.objectContaining({ code: 'phone-bad', field: 'customer.phone', value: 'call me' }),
    )
    expect(() => readPhone('5550123', 'XX')).toThrow(expect.objectContaining({ code: 'region-unknown' }))
    expect(readPhone('212 555 0123 x4', 'US')).toEqual({
      e164: '+12125550123',
      extension: '4',
      assigned: true,
    })
  })
})
