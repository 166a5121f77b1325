import { firstIndex } from '../calendar/index.ts'
import { median } from '../measure/index.ts'
import { type Stretches, stretchesFrom } from './stretches.ts'

/** The temperature a coat has lived through, from a bay's readings, with what was measured told from what was not. */
export interface Reading {
  readonly at: number
  readonly celsius: number
}

export interface BayTemperatures {
  /** In order of time, one a minute at most, as `cleanReadings` leaves them. */
  readonly readings: readonly Reading[]
  /** What the bay usually has: the future's temperature, and a silent log's where nothing colder is known. */
  readonly usualC: number
  readonly nowAt: number
  /** Readings further apart than this are not joined by a straight line. */
  readonly gapLimitMin?: number
}

/** Readings up to an hour apart are joined (common practice, no source). */
export const usualGapLimitMin = 60

/**
 * The temperature from `fromAt` on, without a hole, ending with one stretch that has no end. Between readings at most
 * the gap limit apart it runs in a straight line. In a longer gap it is assumed to have been the coldest of the two
 * readings and the usual temperature, the whole gap long; before the first and after the last reading the nearest one
 * holds for the gap limit, and then the colder of it and the usual. From now on the usual temperature is projected.
 * Where the caution lies in the heat, the hottest is assumed instead.
 */
export function temperatureStretches(
  fromAt: number,
  temperatures: BayTemperatures,
  guess: 'coldest' | 'hottest' = 'coldest',
): Stretches {
  const guessed = guess === 'coldest' ? Math.min : Math.max
  const { readings, usualC, nowAt, gapLimitMin = usualGapLimitMin } = temperatures
  const first = Math.max(0, countUntil(readings, fromAt) - 1)
  const past = countUntil(readings, nowAt)
  const log = stretchesFrom(fromAt, Math.max(0, past - first) + 6)
  const assume = (to: number, celsius: number) => log.add(Math.min(to, nowAt), celsius, celsius, 'assumed')

  if (past === 0) assume(nowAt, usualC)
  else if (fromAt < nowAt) {
    const opening = readings[first]!
    assume(opening.at - gapLimitMin, guessed(opening.celsius, usualC))
    assume(opening.at, opening.celsius)
    for (let i = first + 1; i < past; i++) {
      const a = readings[i - 1]!
      const b = readings[i]!
      if (b.at - a.at > gapLimitMin) assume(b.at, guessed(a.celsius, b.celsius, usualC))
      else {
        const at = log.endAt()
        const share = (at - a.at) / (b.at - a.at)
        log.add(
          b.at,
          share === 0 ? a.celsius : a.celsius + share * (b.celsius - a.celsius),
          b.celsius,
          'measured',
        )
      }
    }
    const last = readings[past - 1]!
    assume(last.at + gapLimitMin, last.celsius)
    assume(nowAt, guessed(last.celsius, usualC))
  }
  log.add(Number.POSITIVE_INFINITY, usualC, usualC, 'projected')
  return log
}

/** How many readings were taken at or before `at`. */
function countUntil(readings: readonly Reading[], at: number): number {
  return firstIndex(readings.length, i => readings[i]!.at > at)
}

const weekMin = 7 * 24 * 60

/** What a bay usually has: the median of its readings in the week up to `nowAt`; null when it has none. */
export function usualTemperature(readings: readonly Reading[], nowAt: number): number | null {
  const recent = readings
    .slice(countUntil(readings, nowAt - weekMin), countUntil(readings, nowAt))
    .map(({ celsius }) => celsius)
  return recent.length === 0 ? null : median(recent)
}
