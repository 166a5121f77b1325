import { afterEach, describe, expect, it } from 'vitest'
import {
  dateLocaleNow,
  decimalNow,
  type Language,
  localeNow,
  speakAs,
  standIn,
} from '../../../main/domain/language/index.ts'

/** At a desk that speaks a language in a country. */
function at(language: Language, country?: string) {
  speakAs(() => language)
  standIn(() => country)
}

describe('how dates, numbers and money are written', () => {
  afterEach(() => at('en'))

  it('is the way of the language in the shop’s country, or at home where none is known', () => {
    at('de', 'AT')
    expect(localeNow()).toBe('de-AT')
    at('de')
    expect(localeNow()).toBe('de-DE')
    at('en', 'US')
    expect(localeNow()).toBe('en-US')
  })

  it('keeps the day before the month in English of any country', () => {
    at('en', 'US')
    expect(dateLocaleNow()).toBe('en-GB')
    at('de', 'CH')
    expect(dateLocaleNow()).toBe('de-CH')
  })

  // Unicode CLDR, common/main/de.xml, de_AT.xml and de_CH.xml: decimal ",", and "." in Switzerland.
  it('takes the decimal mark of the country', () => {
    at('de', 'AT')
    expect(decimalNow(12.5)).toBe('12,5')
    at('de', 'CH')
    expect(decimalNow('12.50')).toBe('12.50')
    at('en', 'US')
    expect(decimalNow(12.5)).toBe('12.5')
    at('de')
    expect(decimalNow(12)).toBe('12')
  })
})
