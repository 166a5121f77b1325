/**
 * Amounts of stock in the shop's measure. Kept are millilitres, grams and pieces everywhere; a shop that measures in US
 * units reads and types fluid ounces and ounces. A bottle of 500 ml is 16.9 fl oz there, as its label says beside it.
 */
import { decimalNow, say, unitsNow } from '../language/index.ts'
import { convert, type Unit as MeasureUnit } from '../measure/index.ts'
import { CENTI_PER_UNIT, type Unit, unitsOf } from './amount.ts'

interface Shown {
  /** As it stands behind a figure. */
  readonly words: string
  readonly kept: MeasureUnit
  readonly shown: MeasureUnit
  /** From how many of the kept unit on amounts are read in the larger one. */
  readonly largeFrom: number
  readonly largeWords: string
  readonly large: MeasureUnit
}

// Source of the factors: NIST Handbook 44, appendix C (see measure/units.ts).
const metric: Readonly<Record<'ml' | 'g', Shown>> = {
  ml: { words: 'ml', kept: 'mL', shown: 'mL', largeFrom: 1_000, largeWords: 'l', large: 'L' },
  g: { words: 'g', kept: 'g', shown: 'g', largeFrom: 1_000, largeWords: 'kg', large: 'kg' },
}
const us: Readonly<Record<'ml' | 'g', Shown>> = {
  ml: {
    words: 'fl oz',
    kept: 'mL',
    shown: 'US fluid ounce',
    largeFrom: convert(1, 'US gallon', 'mL'),
    largeWords: 'gal',
    large: 'US gallon',
  },
  g: {
    words: 'oz',
    kept: 'g',
    shown: 'ounce',
    largeFrom: convert(1, 'pound', 'g'),
    largeWords: 'lb',
    large: 'pound',
  },
}

const shownNow = (unit: 'ml' | 'g') => (unitsNow() === 'us' ? us : metric)[unit]

/** The unit that amounts of `unit` are written and typed in here: `ml`, `fl oz`, `g`, `oz`; null for pieces. */
export function amountUnit(unit: Unit): string | null {
  return unit === 'piece' ? null : shownNow(unit).words
}

/** An amount of the kept unit in the one that is shown: 500 (ml) as 16.907… where that is the fluid ounce. */
export function shownAmount(amount: number, unit: Unit): number {
  if (unit === 'piece') return amount
  const { kept, shown } = shownNow(unit)
  return convert(amount, kept, shown)
}

/** Back: what was typed in the shown unit, in hundredths of the kept one at the finest. */
export function keptAmount(typed: number, unit: Unit): number {
  if (unit === 'piece') return typed
  const { kept, shown } = shownNow(unit)
  return Math.round(convert(typed, shown, kept) * 100) / 100
}

/**
 * `12.5 ml`, `16.9 fl oz`, `1 piece`: an amount in words, to at most `digits` (0..2) decimals of the kept unit. A fluid
 * ounce is thirty millilitres, so it gets a decimal more, and from a hundred of them on no more than the millilitre;
 * what is not nothing is never written as nothing.
 */
export function amountWords(centi: number, unit: Unit, digits = 2): string {
  const amount = unitsOf(centi)
  if (unit === 'piece')
    return say('{shown, plural, one {1 piece} other {{shown} pieces}}', {
      shown: Number(amount.toFixed(digits)),
    })
  const value = shownAmount(amount, unit)
  const inUs = unitsNow() === 'us'
  let decimals = inUs && Math.abs(value) < 100 ? Math.min(2, digits + 1) : digits
  if (inUs && value !== 0) while (decimals < 2 && Number(value.toFixed(decimals)) === 0) decimals++
  return `${decimalNow(Number(value.toFixed(decimals)))} ${shownNow(unit).words}`
}

/** `812 g`, `28.64 oz`: a weight as a scale of the shop shows it; what is no number is said as it is. */
export const weightWords = (grams: number): string =>
  Number.isFinite(grams) ? amountWords(grams * CENTI_PER_UNIT, 'g') : String(grams)

/** `14.7 l`, `3.88 gal`, `2.2 lb`: an amount large enough for the larger unit, to three figures; null for a smaller one. */
function largeWords(amount: number, unit: Unit): string | null {
  if (unit === 'piece') return null
  const { kept, large, largeFrom, largeWords: words } = shownNow(unit)
  if (Math.abs(amount) < largeFrom) return null
  return `${decimalNow(Number(convert(amount, kept, large).toPrecision(3)))} ${words}`
}

/**
 * "90 ml", "2.5 ml", "3 fl oz", "3 pieces": an amount to read at a glance; tenths only where they can be seen, and
 * "14.7 l", "3.52 kg", "3.88 gal" where nobody would count the last millilitre.
 */
export function amountText(amount: number, unit: Unit): string {
  const tenths = unit !== 'piece' && Math.abs(amount) < 10
  return largeWords(amount, unit) ?? amountWords(Math.round(amount * CENTI_PER_UNIT), unit, tenths ? 1 : 0)
}

/**
 * What prices are compared by, `100 ml`, `100 pieces`, or `1 fl oz` where that is the measure, and how many hundreds of
 * the kept unit that is.
 */
export function comparedBy(unit: Unit): { words: string; hundreds: number } {
  if (unit === 'piece') return { words: say('100 pieces'), hundreds: 1 }
  const { words, kept, shown } = shownNow(unit)
  return unitsNow() === 'us'
    ? { words: `1 ${words}`, hundreds: convert(1, shown, kept) / 100 }
    : { words: `100 ${words}`, hundreds: 1 }
}
