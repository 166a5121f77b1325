// RFC 5321 sections 4.1.2 and 4.5.3.1, RFC 5322 section 3.4.1.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readMailAddress } from '../../../main/domain/vehicle/index.ts'
import { checkMailAddress } from '../../../main/domain/vehicle/mailAddress.ts'
import { type Case, runCases } from '../../reference/cases.ts'

runCases(
  'communications',
  [
    [/^mail-/, 'address'],
    [/./, 'elsewhere'],
  ] as const,
  {
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
  },
)

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
