/**
 * The level of use to expect, by the method that would have served this product best so far. The plain mean is best
 * while use is steady, the corrected Croston estimate follows a change, and the third lets a product fade that nobody
 * asks for any more. Which of them fits is not assumed but tried: each forecasts the past four periods at a time.
 */
import { croston, type PatternOfUse, patternOf, teunterSyntetosBabai } from './intermittent.ts'

export type LevelMethod = 'mean' | 'croston-corrected' | 'fading'

export interface Level {
  readonly method: LevelMethod
  /** Expected use per period. */
  readonly perPeriod: number
  /** The estimate compared with the plain mean, for `learnDemand`; between 0.25 and 4. */
  readonly factor: number
  readonly pattern: PatternOfUse
  /** Root mean squared miss of each method over the trial, in amount per period; null where the series is too short. */
  readonly misses: Readonly<Record<LevelMethod, number>> | null
}

const ALPHA = 0.1
const ALPHA_CHANCE = 0.05
const AHEAD = 4
const LEAST_HISTORY = 26
// A rival must have missed by a tenth less: the mean is the steadiest, and a small lead is luck.
const BETTER_BY = 0.9

const methods: Record<LevelMethod, (series: readonly number[]) => number> = {
  mean: series => series.reduce((sum, amount) => sum + amount, 0) / series.length,
  'croston-corrected': series => croston(series, ALPHA)?.syntetosBoylan ?? 0,
  fading: series => teunterSyntetosBabai(series, ALPHA, ALPHA_CHANCE)?.perPeriod ?? 0,
}
const names = Object.keys(methods) as LevelMethod[]

/** Estimates the level of a series of amounts per period (a week suits), oldest first. */
export function estimateLevel(series: readonly number[]): Level {
  const pattern = patternOf(series)
  const mean = series.length === 0 ? 0 : methods.mean(series)
  const misses = series.length >= LEAST_HISTORY && mean > 0 ? trial(series) : null
  let method: LevelMethod = 'mean'
  if (misses !== null)
    for (const name of names)
      if (misses[name] < misses[method] * (method === 'mean' ? BETTER_BY : 1)) method = name
  const perPeriod = method === 'mean' ? mean : methods[method](series)
  const factor = mean === 0 ? 1 : Math.min(4, Math.max(0.25, perPeriod / mean))
  return { method, perPeriod: mean * factor, factor, pattern, misses }
}

/** Every method forecasts the mean of the next periods from each point of the second half. */
function trial(series: readonly number[]): Record<LevelMethod, number> {
  const squares: Record<LevelMethod, number> = { mean: 0, 'croston-corrected': 0, fading: 0 }
  const first = Math.floor(series.length / 2)
  let count = 0
  for (let end = first; end + AHEAD <= series.length; end += AHEAD) {
    const known = series.slice(0, end)
    const actual = methods.mean(series.slice(end, end + AHEAD))
    for (const name of names) squares[name] += (methods[name](known) - actual) ** 2
    count++
  }
  for (const name of names) squares[name] = Math.sqrt(squares[name] / count)
  return squares
}
