import { dayNumber } from '../../../main/domain/calendar/index.ts'
import { takeFirstExpired } from '../../../main/domain/shelf/index.ts'

interface FefoInput {
  readonly today: string
  readonly lots: readonly {
    readonly lot: string
    readonly expires: string | null
    readonly openedGoodUntil?: string
    readonly ml: number
  }[]
  readonly drawMl: number
}

/** Plays one published case of first expired, first out. */
export function fefo({ today, lots, drawMl }: FefoInput): { use: [string, number][]; short: number } {
  const holdings = lots.map(({ lot, expires, openedGoodUntil, ml }) => {
    const dates = [expires, openedGoodUntil ?? null]
      .filter(date => date !== null)
      .map(date => dayNumber(date))
    const lastDay = dates.length === 0 ? null : Math.min(...dates)
    return { lotId: lot, centi: ml * 100, opened: openedGoodUntil !== undefined, lastDay }
  })
  const take = takeFirstExpired(holdings, drawMl * 100, dayNumber(today))
  return { use: take.use.map(({ lotId, centi }) => [lotId, centi / 100]), short: take.shortCenti / 100 }
}
