import { languageNow, localeNow } from '../language/index.ts'
import { formatMoney } from './format.ts'
import { majorOf } from './minor.ts'

/** How money is written in the language of the moment; in English by its currency. */
function localeFor(currency: string): string {
  if (languageNow() !== 'en') return localeNow()
  return currency === 'USD' ? 'en-US' : 'en-GB'
}

/** An amount in a sentence or on a document: `$48.00`, `€48.00`, in German `48,00 €`. */
export function moneyWords(amountMinor: number, currency: string): string {
  return formatMoney(amountMinor, currency, localeFor(currency))
}

/** An amount without its currency, where the head of the column names it: `1,234.50`, in German `1.234,50`. */
export function plainMoney(amountMinor: number, currency: string): string {
  const [whole = '', fraction] = majorOf(amountMinor, currency).split('.')
  const parts = new Intl.NumberFormat(localeFor(currency)).formatToParts(12_345.6)
  const mark = (type: 'group' | 'decimal') => parts.find(part => part.type === type)?.value ?? ''
  const grouped = whole.replaceAll(/\B(?=(\d{3})+$)/g, mark('group'))
  return fraction === undefined ? grouped : `${grouped}${mark('decimal')}${fraction}`
}
