import type { ShelfUnit } from '../../../main/api/views.ts'
import { dateLocaleNow, say } from '../../../main/domain/language/index.ts'
import { amountUnit } from '../../../main/domain/shelf/index.ts'

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
