/** Lists to choose a place from: time zones, countries, currencies, each with its name. */
import { languageNow } from '../../main/domain/language/index.ts'
import { payableCurrencies } from '../../main/domain/money/index.ts'
import { phoneCountries } from '../../main/domain/vehicle/index.ts'

/** Every zone this computer knows; `own` is among them even where the list calls it by another name. */
export function zoneChoices(own: string): string[] {
  return [...new Set([own, 'UTC', ...Intl.supportedValuesOf('timeZone')])].sort()
}

export function countryChoices(): { value: string; label: string }[] {
  const names = new Intl.DisplayNames(languageNow(), { type: 'region' })
  return phoneCountries()
    .map(code => ({ value: code, label: names.of(code) ?? code }))
    .sort((a, b) => a.label.localeCompare(b.label, languageNow()))
}

export function currencyChoices(): { value: string; label: string }[] {
  const names = new Intl.DisplayNames(languageNow(), { type: 'currency' })
  return payableCurrencies().map(code => ({ value: code, label: `${code} · ${names.of(code) ?? code}` }))
}
