import { say } from '../language/index.ts'
import { Refusal } from '../refusal.ts'
import { minorUnitsOf } from './currencies.ts'
import { majorOf, minorOf } from './minor.ts'

// Building an Intl formatter costs far more than using one, and a screen formats the same currency hundreds of times.
const formatters = new Map<string, Intl.NumberFormat>()

function formatterOf(currency: string, locale: string): Intl.NumberFormat {
  const key = `${locale} ${currency}`
  const known = formatters.get(key)
  if (known) return known
  // The digits are ISO 4217's, not the locale's display habit: an invoice shows every minor unit there is.
  const digits = minorUnitsOf(currency)
  const made = new Intl.NumberFormat(locale, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  })
  formatters.set(key, made)
  return made
}

/** An amount as people of that locale write it: formatMoney(123456, 'EUR', 'de-DE') is "1.234,56 €". */
export function formatMoney(amountMinor: number, currency: string, locale: string): string {
  // A decimal string, so that no amount passes through a binary fraction.
  return formatterOf(currency, locale).format(majorOf(amountMinor, currency) as Intl.StringNumericLiteral)
}

/**
 * Reads an amount typed at the desk, in the locale's own writing: "1,234.50" or "$1234.5" in en-US, "1.234,50 €" in de-DE.
 * Refuses text with other letters, a grouping mark not followed by its digits, and more decimals than the currency has.
 */
export function readMoney(text: string, currency: string, locale: string, field = 'amount'): number {
  const refuse = () => {
    const example = formatMoney(minorOf('1234.5', currency, 'half-even'), currency, locale)
    return new Refusal(
      'amount-bad',
      field,
      text,
      say('"{text}" is not an amount; write it like {example}.', { text, example }),
    )
  }
  const parts = formatterOf(currency, locale).formatToParts(-1234567.5)
  const ofType = (type: Intl.NumberFormatPartTypes) =>
    plain(parts.find(part => part.type === type)?.value ?? '')
  const decimal = ofType('decimal') || '.'
  const group = ofType('group')
  const bare = [ofType('currency'), currency]
    .reduce((left: string, sign) => (sign ? left.replace(sign, '') : left), plain(text))
    .replaceAll(/\s/gu, '')
    .replace(/^−/u, '-')
  const [whole = '', fraction, ...more] = bare.split(decimal)
  const digits = group.trim() ? ungrouped(whole, group) : whole
  if (more.length > 0 || !/^-?\d+$/.test(digits) || (fraction !== undefined && !/^\d+$/.test(fraction)))
    throw refuse()
  return minorOf(fraction === undefined ? digits : `${digits}.${fraction}`, currency, undefined, field)
}

/** One form for look-alikes: wide and narrow signs, and the apostrophe that Swiss printing curls and keyboards do not. */
function plain(text: string): string {
  return text.normalize('NFKC').replaceAll('’', "'")
}

/** Takes grouping marks out where they stand before whole groups; elsewhere they stay, and the text is refused. */
function ungrouped(whole: string, group: string): string {
  const [first = '', ...rest] = whole.split(group)
  const last = rest.at(-1)
  const grouped = last?.length === 3 && rest.every(each => each.length === 3 || each.length === 2)
  return grouped && /^-?\d{1,3}$/.test(first) ? first + rest.join('') : whole
}
