import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readScan } from '../../../main/domain/shelf/index.ts'

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
