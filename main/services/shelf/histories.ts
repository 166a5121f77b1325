/** What each product was asked for in the past, as the shelf learns from it. */
import { dayNumber } from '../../domain/calendar/index.ts'
import { addTo, estimateLevel, type History, type Level } from '../../domain/shelf/index.ts'
import type { Tx } from '../../store/store.ts'
import { type PastUse, pastUse } from '../../store/useRows.ts'
import { type Made, usesCountedBack } from './dilutions.ts'
import type { ShopDays } from './shopDays.ts'

/** How far back the shelf looks, in days: a year holds every season once. */
export const historyDays = 365

export interface PastOf {
  readonly history: History
  /** The level of use to expect, by the method that has served this product best. */
  readonly level: Level
  /** Something of it has been received once. */
  readonly everReceived: boolean
}

/** The past of these products. `fromAt` is the first minute of the first day looked at. */
export async function histories(
  tx: Tx,
  days: ShopDays,
  today: number,
  fromAt: number,
  of: {
    productIds: readonly string[] | undefined
    made: readonly Made[]
    /** The first day something of the product was received on; null: none was. */
    firstOf(productId: string): string | null
  },
): Promise<(productId: string) => PastOf> {
  const uses = usesCountedBack(await pastUse(tx, fromAt, of.productIds), of.made)
  return productId => {
    const received = of.firstOf(productId)
    // Before the first bottle came there was nothing to use: that says nothing about demand.
    const first = Math.max(today - historyDays, received === null ? today : dayNumber(received))
    const found = past(uses.get(productId) ?? [], days, Math.min(first, today), today)
    return { ...found, everReceived: received !== null }
  }
}

function past(uses: readonly PastUse[], days: ShopDays, first: number, today: number) {
  const from = days.openBefore(first)
  // The day that is about to close counts, open or not: something may have been used on it.
  const to = Math.max(days.openBefore(today + 1), from + 1)
  const week = new Float64Array(Math.max(1, Math.floor((today - first + 1) / 7)))
  const draws = uses.map(use => {
    const day = days.dayOf(use.at)
    const back = Math.floor((today - day) / 7)
    if (back < week.length) addTo(week, week.length - 1 - back, use.centi)
    const usedOn = Math.min(days.openBefore(day), to - 1)
    return {
      usedOn,
      knownOn: use.knownAt === null ? null : Math.min(usedOn, days.openBefore(days.dayOf(use.knownAt))),
      centi: use.centi,
      expectedCenti: use.expectedCenti,
    }
  })
  return { history: { from, to, draws }, level: estimateLevel(Array.from(week)) }
}
