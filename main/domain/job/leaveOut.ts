import { shareOf } from '../shop/index.ts'

/** A step of a job with the shares of the paint, 0 to 1, of the treatments it is done for: as sold, and as left. */
export interface LeftStep {
  readonly kind: string
  readonly stage: string
  readonly minutes: number
  readonly actualStartAt: number | null
  readonly shares: readonly { readonly before: number; readonly after: number }[]
}

/**
 * The minutes of each step once panels are left out: what is done panel by panel and has not begun takes as much less as
 * there is less paint, up to the next grid point; done for several treatments, as long as the one that goes over most.
 * Washing, drying, holds, and what has begun stay as they are.
 */
export function minutesWithout(steps: readonly LeftStep[], gridMin: number): number[] {
  return steps.map(step => {
    if (step.kind !== 'work' || step.actualStartAt !== null || step.shares.length === 0) return step.minutes
    const most = (side: 'before' | 'after') => Math.max(...step.shares.map(each => shareOf(step, each[side])))
    const [before, after] = [most('before'), most('after')]
    if (!(after < before)) return step.minutes
    // The small allowance keeps a part that is a grid point from becoming the next one.
    const part = Math.ceil(((step.minutes * after) / before - 1e-9) / gridMin) * gridMin
    return Math.min(step.minutes, Math.max(gridMin, part))
  })
}
