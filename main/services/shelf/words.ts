import { formatMoney, majorOf } from '../../domain/money/index.ts'

/** An amount in a sentence or on a document: `$48.00`, `€48.00`. The documents are written in English. */
export function moneyWords(amountMinor: number, currency: string): string {
  return formatMoney(amountMinor, currency, currency === 'USD' ? 'en-US' : 'en-GB')
}

/** An amount without its currency, where the head of the column names it: `1,234.50`. */
export function plainMoney(amountMinor: number, currency: string): string {
  const [whole, fraction] = majorOf(amountMinor, currency).split('.')
  const grouped = whole!.replaceAll(/\B(?=(\d{3})+$)/g, ',')
  return fraction === undefined ? grouped : `${grouped}.${fraction}`
}
