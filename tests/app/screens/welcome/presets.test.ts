import { expect, test } from 'vitest'
import { countryChoices, currencyChoices, zoneChoices } from '../../../../app/parts/placeChoices.ts'
import { presetsFor } from '../../../../app/screens/welcome/presets.ts'

// Currencies: ISO 4217, from memory. Likely regions of a language: Unicode CLDR.
test.each([
  ['en-US', 'US', 'USD', 'us'],
  ['en', 'US', 'USD', 'us'],
  ['en-GB', 'GB', 'GBP', 'metric'],
  ['de-CH', 'CH', 'CHF', 'metric'],
  ['de', 'DE', 'EUR', 'metric'],
  ['fr-CA', 'CA', 'CAD', 'metric'],
  ['pt-BR', 'BR', 'BRL', 'metric'],
  ['ja', 'JP', 'JPY', 'metric'],
])('a browser that speaks %s begins in %s with %s', (language, country, currency, units) => {
  const spoken = language.startsWith('de') ? 'de' : 'en'
  expect(presetsFor(language)).toEqual({ country, currency, units, language: spoken })
})

test('every preset can be chosen', () => {
  const countries = countryChoices().map(({ value }) => value)
  const currencies = currencyChoices().map(({ value }) => value)
  for (const language of ['en-US', 'en-GB', 'de-CH', 'nl', 'sv', 'en-IN', 'ar-AE']) {
    const { country, currency } = presetsFor(language)
    expect(countries).toContain(country)
    expect(currencies).toContain(currency)
  }
})

test('zones hold the browser’s own, UTC, and each once', () => {
  const zones = zoneChoices('America/New_York')
  expect(zones).toEqual(expect.arrayContaining(['America/New_York', 'Europe/Berlin', 'UTC']))
  expect(new Set(zones).size).toBe(zones.length)
})
