/** Where two cars are to stand in one bay at once: saving never makes it so, what really happened may. */
import type { StayView } from '../../../../main/api/views.ts'

export interface Overlap {
  readonly bayId: string
  readonly fromAt: number
  readonly toAt: number
}

export function overlapsOf(stays: readonly Pick<StayView, 'bayId' | 'fromAt' | 'toAt'>[]): Overlap[] {
  return stays.flatMap((one, i) =>
    stays.slice(i + 1).flatMap(other => {
      const fromAt = Math.max(one.fromAt, other.fromAt)
      const toAt = Math.min(one.toAt, other.toAt)
      return one.bayId === other.bayId && fromAt < toAt ? { bayId: one.bayId, fromAt, toAt } : []
    }),
  )
}
