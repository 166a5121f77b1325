import { describe, expect, it } from 'vitest'
import { dateLocaleNow, decimalNow, localeNow } from '../../../main/domain/language/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

describe('how dates, numbers and money are written', () => {
  it('is the way of the language in the shop’s country, or at home where none is known', () => {
    expect(speaking('de', () => localeNow(), { country: 'AT' })).toBe('de-AT')
    expect(speaking('de', () => localeNow())).toBe('de-DE')
    expect(speaking('en', () => localeNow(), { country: 'US' })).toBe('en-US')
  })

  it('orders day and month in English as the country does', () => {
    expect(speaking('en', () => dateLocaleNow(), { country: 'US' })).toBe('en-US')
    expect(speaking('en', () => dateLocaleNow(), { country: 'IE' })).toBe('en-GB')
    expect(speaking('de', () => dateLocaleNow(), { country: 'CH' })).toBe('de-CH')
  })

  // Unicode CLDR, common/main/de.xml, de_AT.xml and de_CH.xml: decimal ",", and "." in Switzerland.
  it('takes the decimal mark of the country', () => {
    expect(speaking('de', () => decimalNow(12.5), { country: 'AT' })).toBe('12,5')
    expect(speaking('de', () => decimalNow('12.50'), { country: 'CH' })).toBe('12.50')
    expect(speaking('en', () => decimalNow(12.5), { country: 'US' })).toBe('12.5')
    expect(speaking('de', () => decimalNow(12))).toBe('12')
  })
})
