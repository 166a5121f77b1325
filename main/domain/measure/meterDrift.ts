/** How a gloss meter comes to read otherwise over the months, by what it read of its tile before each set. */
import { fitLine, predict, trendOf } from './line.ts'

/** The tile as the meter read it on a day, less the figure printed on it. */
export interface TileReading {
  /** Days from any day on. */
  readonly day: number
  readonly offGu: number
}

export interface MeterDrift {
  readonly readings: number
  readonly lastOffGu: number
  /** Gloss units a year by the trend (Theil 1950, Sen 1968), which a single slip does not move; null: too few days. */
  readonly aYearGu: number | null
  /** Where the next reading on `today` lies in 95 of 100 cases, by the least-squares line; null: fewer than three. */
  readonly next: { readonly low: number; readonly high: number } | null
  /** Whether the next reading may well be off by more than is allowed. */
  readonly leaves: boolean
}

/** Older readings say little of a meter that was serviced since. */
const mostReadings = 60

/**
 * The drift of one meter on one tile, of its latest readings in any order; null without any. A line is drawn only
 * through three readings on two days and more.
 * @throws Refusal `reading-bad` for what is no number.
 */
export function meterDrift(
  readings: readonly TileReading[],
  { today, allowedGu }: { readonly today: number; readonly allowedGu: number },
): MeterDrift | null {
  const latest = [...readings].sort((a, b) => a.day - b.day).slice(-mostReadings)
  const last = latest.at(-1)
  if (!last) return null
  const points = latest.map(({ day, offGu }) => [day, offGu] as const)
  const lined = points.length >= 3 && new Set(points.map(([day]) => day)).size >= 2
  const next = lined ? predict(fitLine(points), today).next : null
  return {
    readings: latest.length,
    lastOffGu: last.offGu,
    aYearGu: lined ? trendOf(points).slope * 365 : null,
    next,
    leaves: next !== null && (next.high > allowedGu || next.low < -allowedGu),
  }
}
