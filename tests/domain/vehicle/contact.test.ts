// ITU-T E.164; RFC 5321 sections 4.1.2 and 4.5.3.1, RFC 5322 section 3.4.1. Numbers reserved for fiction, from memory.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parsePhone, readMailAddress, readPhone, showPhone } from '../../../main/domain/vehicle/index.ts'
import { checkMailAddress } from '../../../main/domain/vehicle/mailAddress.ts'
import { type Case, runCases } from '../../reference/cases.ts'

const firstSet = [
  [/^phone-/, 'phone'],
  [/^mail-/, 'address'],
  [/./, 'elsewhere'],
] as const

runCases('communications', firstSet, {
  phone: (entry: Case<{ raw: string; region: string }, { e164: string | null; extension?: string }>) => {
    const phone = parsePhone(entry.input.raw, entry.input.region)
    expect(phone?.e164 ?? null).toBe(entry.expected.e164)
    expect(phone?.extension ?? undefined).toBe(entry.expected.extension)
  },

  address: (entry: Case<{ address: string }, { valid: boolean | string; strictOnly?: boolean }>) => {
    const check = checkMailAddress(entry.input.address)
    const { strictOnly, valid } = entry.expected
    if (strictOnly || typeof valid === 'string') {
      // Sound by the RFC: "true", or why.
      expect(valid).toBeTruthy()
      // Refused here all the same, so that the words must say why.
      expect(check).toMatchObject({
        valid: false,
        why: expect.stringMatching(/not taken|Only plain|no dot/),
      })
    } else expect(check.valid).toBe(valid)
  },
})

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

describe('e-mail addresses', () => {
  it('keep the name’s case, lower the domain’s, lose the spaces around', () => {
    expect(readMailAddress(' Front.Desk@Example.COM ')).toBe('Front.Desk@example.com')
  })

  it('never let a line end through, so that nothing can be put into a header', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('\r', '\n', '\r\n', '\0', ','), fc.string(), (a, mark, b) => {
        expect(checkMailAddress(`x${a}${mark}${b}y@example.com`).valid).toBe(false)
        expect(checkMailAddress(`x@example.com${mark}${b}y`).valid).toBe(false)
      }),
    )
  })

  it('are refused with the reason and the field', () => {
    expect(() => readMailAddress('ann@', 'customer.email')).toThrow(
      expect.objectContaining({ code: 'mail-address-bad', field: 'customer.email' }),
    )
    const why = (address: string) => {
      const check = checkMailAddress(address)
      return check.valid ? '' : check.why
    }
    expect(why('ann')).toContain('@')
    expect(why('@example.com')).toContain('missing')
    expect(why(`${'a'.repeat(60)}@${'b.'.repeat(98)}example`)).toContain('254')
    expect(why(`ann@${'b'.repeat(64)}.example`)).toContain('domain')
  })
})
