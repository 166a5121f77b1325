import {
  dateOfDay,
  dayNumber,
  dayWords,
  longDayWords,
  weekdayName,
  weekdayWillDo,
} from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import {
  amountWords,
  byLastDay,
  lastDayOf,
  shareWords,
  type Unit,
  unitsOf,
  usableOn,
} from '../../domain/shelf/index.ts'
import type { LotRow } from '../../store/lotRows.ts'
import { holdingOfRow } from './countedProducts.ts'

/** One container with something in it. */
export type LotView = ReturnType<typeof lotViews>[number]

/** The bottles of one product in the order they are to be used; those past their date at the end. */
export function lotViews(rows: readonly LotRow[], unit: Unit, day: number) {
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
    const { id, number, productId, sizeId, sizeLabel, batch, receivedOn, expiresOn, openedOn } = row
    const state: 'sealed' | 'open' | 'expired' =
      row.centi > 0 && !usable ? 'expired' : openedOn === null ? 'sealed' : 'open'
    return {
      id,
      number,
      productId,
      sizeId,
      sizeLabel,
      batch,
      onHand: unitsOf(row.centi),
      receivedOn,
      waterParts: row.waterParts,
      /** Printed on it. */
      expiresOn,
      openedOn,
      /** The last day it may be used: the earlier of the printed one and the opened bottle's own. Null: it keeps. */
      lastOn: last === null ? null : dateOfDay(last),
      state,
      /** The one to take next. */
      next: i === 0 && usable,
      words: bottleWords(row, unit, day),
    }
  })
}

/** What bottles hold by the ledger, and what of it may still be used. */
export function amountsOf(rows: readonly LotRow[], day: number) {
  const sum = (list: readonly LotRow[]) => unitsOf(list.reduce((total, row) => total + row.centi, 0))
  return { onHand: sum(rows), usable: sum(rows.filter(row => usableOn(holdingOfRow(row), day))) }
}

/** `no. 412, opened 3 April, use by 3 July, 180 ml left`. */
export function bottleWords(row: LotRow, unit: Unit, day: number): string {
  const last = lastDayOf(row)
  const year = dateOfDay(day).slice(0, 4)
  return [
    say('no. {number}', { number: row.number }),
    row.waterParts !== null
      ? say('mixed {receivedOn} {shareWords}', {
          receivedOn: dayWords(row.receivedOn, year),
          shareWords: shareWords({ waterParts: row.waterParts }),
        })
      : row.openedOn === null
        ? say('sealed')
        : say('opened {openedOn}', { openedOn: dayWords(row.openedOn, year) }),
    last === null
      ? null
      : last < day
        ? say('past its date since {day}', { day: dayWords(dateOfDay(last), year) })
        : say('use by {day}', { day: dayWords(dateOfDay(last), year) }),
    say('{centi} left', { centi: amountWords(row.centi, unit, row.centi < 1_000 ? 1 : 0) }),
  ]
    .filter(Boolean)
    .join(', ')
}

/** `today`, `tomorrow`, `Thursday` within six days, else `Thursday 23 April`. */
export function nearDayWords(date: string, day: number): string {
  const ahead = dayNumber(date) - day
  const today = dateOfDay(day)
  if (ahead === 0) return say('today')
  if (ahead === 1) return say('tomorrow')
  const weekday = weekdayName(date)
  return ahead > 0 && weekdayWillDo(date, today) ? weekday : longDayWords(date, today)
}
