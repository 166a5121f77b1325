/*
 * How dates, numbers and money are written at this moment: as people of the shop's country write them who speak the
 * language of the moment. A language of its own country stands in where no country is known.
 */
import { type Language, languageNow } from './languages.ts'
import { waysNow } from './ways.ts'

const ownCountry: Readonly<Record<Language, string>> = { en: 'GB', de: 'DE' }

const marks = new Map<string, string>()

/** Language and country as Intl and Temporal take them: "de-AT". */
export function localeNow(): string {
  const language = languageNow()
  return `${language}-${waysNow()?.country || ownCountry[language]}`
}

/** A plain decimal, "12.5", with the decimal mark of the moment: "12,5" in German. */
export function decimalNow(plain: string | number): string {
  return String(plain).replace('.', decimalMark())
}

/** What stands before the decimals: "," in Austria, "." in Switzerland. */
export function decimalMark(): string {
  const locale = localeNow()
  let mark = marks.get(locale)
  if (mark === undefined) {
    const parts = new Intl.NumberFormat(locale).formatToParts(1.5)
    mark = parts.find(part => part.type === 'decimal')?.value ?? '.'
    marks.set(locale, mark)
  }
  return mark
}
