/** Amounts of stock as people type them: a figure in the shop's measure, or with its unit behind it. */
import type { ShelfUnit } from '../../../main/api/views.ts'
import { decimalNow } from '../../../main/domain/language/index.ts'
import { convert, type Unit } from '../../../main/domain/measure/index.ts'
import { amountUnit, keptAmount, shownAmount } from '../../../main/domain/shelf/index.ts'
import { type NumberLimits, numberRemedy, readNumber } from '../numberText.ts'

/** What may stand behind the figure. An ounce of a liquid is a fluid ounce, as on its label. */
const typedUnits: Readonly<Record<'ml' | 'g', Readonly<Record<string, Unit>>>> = {
  ml: { ml: 'mL', l: 'L', floz: 'US fluid ounce', oz: 'US fluid ounce', gal: 'US gallon' },
  g: { g: 'g', kg: 'kg', oz: 'ounce', lb: 'pound', lbs: 'pound' },
}

const shownHundredths = (amount: number, unit: ShelfUnit) => Math.round(shownAmount(amount, unit) * 100) / 100

/** An amount of the kept unit as its field shows it: 500 as "16.91" where fluid ounces are the measure. */
export const amountShown = (amount: number, unit: ShelfUnit) => decimalNow(shownHundredths(amount, unit))

/**
 * What was typed, in the kept unit: "8", "8 fl oz", "250 ml", "0.5 l"; undefined for what is no amount, or none between
 * the limits, which are of the kept unit.
 */
export function readAmount(text: string, unit: ShelfUnit, limits: NumberLimits): number | undefined {
  const { least = 0, most = 1_000_000 } = limits
  const [, figure = '', behind = ''] = /^(.*?)\s*(\p{L}[\p{L}. ]*)?$/u.exec(text.trim()) ?? []
  const named = behind.toLowerCase().replaceAll(/[. ]/g, '')
  const typed = readNumber(figure, { ...limits, least: -1_000_000, most: 1_000_000 })
  if (typed === undefined) return undefined
  const amount = named === '' ? keptAmount(typed, unit) : inUnit(typed, named, unit)
  return amount === undefined || amount < least || amount > most ? undefined : amount
}

function inUnit(typed: number, named: string, unit: ShelfUnit): number | undefined {
  const from = unit === 'piece' ? undefined : typedUnits[unit][named]
  if (!from) return undefined
  return Math.round(convert(typed, from, unit === 'ml' ? 'mL' : 'g') * 100) / 100
}

/** What to write instead, with the limits as the field counts. */
export function amountRemedy(unit: ShelfUnit, limits: NumberLimits): string {
  if (amountUnit(unit) === null) return numberRemedy(limits)
  const { least = 0, most = 1_000_000 } = limits
  return numberRemedy({
    least: Math.ceil(shownAmount(least, unit) * 100) / 100,
    most: Math.floor(shownAmount(most, unit)),
  })
}
