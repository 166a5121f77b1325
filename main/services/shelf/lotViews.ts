import {
  dateOfDay,
  dayNumber,
  dayWords as fullDayWords,
  weekdayName,
  weekdayWillDo,
} from '../../domain/calendar/index.ts'
import { amountWords, byLastDay, lastDayOf, unitsOf, usableOn } from '../../domain/shelf/index.ts'
import type { LotRow } from '../../store/lotRows.ts'
import { holdingOfRow } from './countedProducts.ts'
import type { LotView, ShelfUnit } from './views/lots.ts'

/** The bottles of one product in the order they are to be used; those past their date at the end. */
export function lotViews(rows: readonly LotRow[], unit: ShelfUnit, day: number): LotView[] {
  const ordered = rows
    .map(row => ({ row, holding: holdingOfRow(row) }))
    .sort(
      (a, b) =>
        Number(usableOn(b.holding, day)) - Number(usableOn(a.holding, day)) ||
        byLastDay(a.holding, b.holding),
    )
  return ordered.map(({ row, holding }, i) => {
    const usable = usableOn(holding, day)
    const last = lastDayOf(row)
    return {
      id: row.id,
      number: row.number,
      productId: row.productId,
      sizeId: row.sizeId,
      sizeLabel: row.sizeLabel,
      batch: row.batch,
      onHand: unitsOf(row.centi),
      receivedOn: row.receivedOn,
      expiresOn: row.expiresOn,
      openedOn: row.openedOn,
      lastOn: last === null ? null : dateOfDay(last),
      state: row.centi > 0 && !usable ? 'expired' : row.openedOn === null ? 'sealed' : 'open',
      next: i === 0 && usable,
      words: bottleWords(row, unit, day),
    }
  })
}

/** `no. 412, opened 3 April, use by 3 July, 180 ml left`. */
export function bottleWords(row: LotRow, unit: ShelfUnit, day: number): string {
  const last = lastDayOf(row)
  const year = dateOfDay(day).slice(0, 4)
  return [
    `no. ${row.number}`,
    row.openedOn === null ? 'sealed' : `opened ${dayWords(row.openedOn, year)}`,
    last === null
      ? null
      : `${last < day ? 'past its date since' : 'use by'} ${dayWords(dateOfDay(last), year)}`,
    `${amountWords(row.centi, unit)} left`,
  ]
    .filter(Boolean)
    .join(', ')
}

/** `3 April`, with its year where that is not `year`. */
export function dayWords(date: string, year = ''): string {
  const words = fullDayWords(date)
  return year !== '' && date.startsWith(year) ? words.slice(0, -5) : words
}

/** `today`, `tomorrow`, `Thursday` within six days, else `Thursday 23 April`. */
export function nearDayWords(date: string, day: number): string {
  const ahead = dayNumber(date) - day
  const today = dateOfDay(day)
  if (ahead === 0) return 'today'
  if (ahead === 1) return 'tomorrow'
  const weekday = weekdayName(date)
  return ahead > 0 && weekdayWillDo(date, today) ? weekday : `${weekday} ${dayWords(date, today.slice(0, 4))}`
}
