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
  const meanCenti: number[] = []
  const variance: number[] = []
  const last = demand.ahead.length - 1
  const cells = demand.ahead.slice(0, days + 1).map(chances => varianceOf(chances) * demand.stepCenti ** 2)
  for (let k = 0; k <= days; k++) {
    if (k <= last) {
      meanCenti.push(demand.aheadMeanCenti[k]!)
      variance.push(cells[k]!)
    } else {
      const step = last > 0 ? demand.aheadMeanCenti[last]! - demand.aheadMeanCenti[last - 1]! : 0
      const spread = last > 0 ? Math.max(0, cells[last]! - cells[last - 1]!) : 0
      meanCenti.push(meanCenti[k - 1]! + step)
      variance.push(variance[k - 1]! + spread)
    }
  }
  return { meanCenti, variance }
}
