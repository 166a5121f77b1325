import type { ShelfUnit } from '../../../main/api/views.ts'
import { dateLocaleNow, say } from '../../../main/domain/language/index.ts'
import { amountUnit, amountWords, CENTI_PER_UNIT, largeWords } from '../../../main/domain/shelf/index.ts'

/**
 * "90 ml", "2.5 ml", "3 fl oz", "3 pieces": an amount as the shelf's own words write it; tenths only where they can be
 * seen, and "14.7 l", "3.52 kg", "3.88 gal" where nobody would count the last millilitre.
 */
export function amountText(amount: number, unit: ShelfUnit): string {
  const tenths = unit !== 'piece' && Math.abs(amount) < 10
  return largeWords(amount, unit) ?? amountWords(Math.round(amount * CENTI_PER_UNIT), unit, tenths ? 1 : 0)
}

/** The unit beside a field: "ml", "g", "fl oz", "pcs". */
export function unitText(unit: ShelfUnit): string {
  return amountUnit(unit) ?? say('pcs')
}

/** "27 Nov 2026" of a day written YYYY-MM-DD: an expiry may lie years ahead. */
export function yearDateWords(date: string): string {
  return Temporal.PlainDate.from(date).toLocaleString(dateLocaleNow(), {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  })
}

/** "Nov 2027": what fits under a bottle. */
export function monthWords(date: string): string {
  return Temporal.PlainDate.from(date).toLocaleString(dateLocaleNow(), { month: 'short', year: 'numeric' })
}

/** "21 Apr": what fits under a chart. */
export function tickWords(date: string): string {
  const day = Temporal.PlainDate.from(date)
  return day.toLocaleString(dateLocaleNow(), { day: 'numeric', month: 'short' })
}
