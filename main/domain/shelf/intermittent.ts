/**
 * Estimates for use that comes now and then. Plain smoothing is biased for such series: it stands highest just after a
 * demand, which is when stock is ordered. All series are amounts per period, oldest first.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export interface Croston {
  /** Smoothed size of a demand. */
  readonly size: number
  /** Smoothed periods from one demand to the next. */
  readonly interval: number
  readonly perPeriod: number
  /** The same with the bias of dividing by a smoothed interval taken out: times 1 − α/2. */
  readonly syntetosBoylan: number
}

/**
 * Croston (1972) with the correction of Syntetos and Boylan (2005). Starts at the first demand with its size and its
 * period number; sizes and intervals are smoothed only where there is a demand. Null for a series without any.
 */
export function croston(series: readonly number[], alpha: number): Croston | null {
  checkShare(alpha, 'alpha')
  let size: number | null = null
  let interval = 0
  let since = 0
  for (const amount of series) {
    since++
    if (amount <= 0) continue
    if (size === null) {
      size = amount
      interval = since
    } else {
      size += alpha * (amount - size)
      interval += alpha * (since - interval)
    }
    since = 0
  }
  if (size === null) return null
  const perPeriod = size / interval
  return { size, interval, perPeriod, syntetosBoylan: perPeriod * (1 - alpha / 2) }
}

/**
 * Teunter, Syntetos and Babai (2011): the chance of a demand is smoothed every period, its size only where there is
 * one. So the estimate sinks while nothing is asked for, which Croston's never does: better for products on their way
 * out. Starts like `croston`. Null for a series without demand.
 */
export function teunterSyntetosBabai(
  series: readonly number[],
  alphaSize: number,
  alphaChance: number,
): { size: number; chance: number; perPeriod: number } | null {
  checkShare(alphaSize, 'alphaSize')
  checkShare(alphaChance, 'alphaChance')
  const first = series.findIndex(amount => amount > 0)
  let size = series[first]
  if (size === undefined) return null
  let chance = 1 / (first + 1)
  for (const amount of series.slice(first + 1)) {
    chance += alphaChance * ((amount > 0 ? 1 : 0) - chance)
    if (amount > 0) size += alphaSize * (amount - size)
  }
  return { size, chance, perPeriod: size * chance }
}

export type DemandPattern = 'none' | 'smooth' | 'erratic' | 'intermittent' | 'lumpy'

export interface PatternOfUse {
  readonly pattern: DemandPattern
  /** Periods for each one with demand. */
  readonly interval: number
  /** Squared coefficient of variation of the sizes. */
  readonly sizeCv2: number
}

/** How use comes, with the cut-offs of Syntetos, Boylan and Croston (2005): interval 1.32 and cv² 0.49. */
export function patternOf(series: readonly number[]): PatternOfUse {
  const sizes = series.filter(amount => amount > 0)
  if (sizes.length === 0) return { pattern: 'none', interval: Number.POSITIVE_INFINITY, sizeCv2: 0 }
  const interval = series.length / sizes.length
  const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length
  const sizeCv2 = sizes.reduce((sum, size) => sum + (size / mean - 1) ** 2, 0) / sizes.length
  if (interval < 1.32) return { pattern: sizeCv2 < 0.49 ? 'smooth' : 'erratic', interval, sizeCv2 }
  return { pattern: sizeCv2 < 0.49 ? 'intermittent' : 'lumpy', interval, sizeCv2 }
}

function checkShare(alpha: number, field: string): void {
  if (!(alpha > 0 && alpha <= 1))
    refuse(
      'share-bad',
      { [field]: alpha },
      say('{alpha} is no smoothing share; give one above 0 and up to 1, such as 0.1.', { alpha }),
    )
}
