/** Unforeseen use over the open days ahead, as the projection wants it: cumulative mean and variance. */
import { varianceOf } from './chances.ts'
import type { Demand } from './demand.ts'

export interface UseAhead {
  /** `meanCenti[k]`: expected over the next k open days; `[0]` is 0. */
  readonly meanCenti: readonly number[]
  /** Centi squared, of the same. */
  readonly variance: readonly number[]
}

/** Taken from learned demand; beyond the days it looked ahead the last day's use goes on. */
export function useAhead(demand: Demand, days: number): UseAhead {
  const variance = demand.ahead.slice(0, days + 1).map(chances => varianceOf(chances) * demand.stepCenti ** 2)
  return { meanCenti: goingOn(demand.aheadMeanCenti, days), variance: goingOn(variance, days) }
}

/** Sums of the first days, the last day's growth repeated for those behind. */
function goingOn(sums: readonly number[], days: number): number[] {
  const [before = 0, last = before] = sums.slice(-2)
  const growth = Math.max(0, last - before)
  return Array.from({ length: days + 1 }, (_, k) => sums[k] ?? last + growth * (k - sums.length + 1))
}
