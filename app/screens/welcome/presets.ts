import { type Language, languages } from '../../../main/domain/language/index.ts'
import type { UnitSystem } from '../../../main/domain/shop/index.ts'

const euro = 'AT BE CY DE EE ES FI FR GR HR IE IT LT LU LV MT NL PT SI SK'.split(' ')

/** The money of countries many shops are in, from memory; others choose from the whole list. */
const currencies: Readonly<Record<string, string>> = {
  ...Object.fromEntries(euro.map(country => [country, 'EUR'])),
  AE: 'AED',
  AU: 'AUD',
  BR: 'BRL',
  CA: 'CAD',
  CH: 'CHF',
  CZ: 'CZK',
  DK: 'DKK',
  GB: 'GBP',
  IN: 'INR',
  JP: 'JPY',
  MX: 'MXN',
  NO: 'NOK',
  NZ: 'NZD',
  PL: 'PLN',
  SE: 'SEK',
  SG: 'SGD',
  US: 'USD',
  ZA: 'ZAR',
}

/** What a first run begins with, from the language of the browser: "de-CH" is Switzerland and its francs. */
export function presetsFor(tag: string): {
  country: string
  currency: string
  units: UnitSystem
  language: Language
} {
  const { language, region } = new Intl.Locale(tag).maximize()
  const country = region ?? 'US'
  return {
    country,
    currency: currencies[country] ?? 'USD',
    units: country === 'US' ? 'us' : 'metric',
    language: languages.find(each => each === language) ?? 'en',
  }
}
