import type { Leaving } from '../cure/index.ts'
import { coatsOf, leavingTimes, marksOf, type ProductsById } from './cureMarks.ts'
import type { FloorStep } from './floorJobs.ts'

export interface NextThingView {
  what: 'touch' | 'layer' | 'topper' | 'leave'
  fromAt: number
  untilAt: number | null
  /** Of `leave`: dry, or under the cover somebody has confirmed. */
  leaving: Leaving
}

/**
 * The next thing a car with a laid coat may have done, by its running clocks; null where nothing is laid, or where
 * hands are on it.
 */
export function nextThing(
  steps: readonly FloorStep[],
  products: ProductsById,
  nowAt: number,
  leaving: Leaving,
): NextThingView | null {
  const coat = coatsOf(steps, products).findLast(each => each.laid)
  if (!coat || steps.some(step => step.actualStartAt !== null && step.actualEndAt === null)) return null
  const marks = marksOf(coat, leaving)
  if (nowAt < marks.tackFreeAt) return { what: 'touch', fromAt: marks.tackFreeAt, untilAt: null, leaving }
  const over = steps
    .slice(coat.index + 1)
    .find(step => step.kind === 'work' && (step.stage === 'coat' || step.stage === 'topper'))
  if (over?.stage === 'topper')
    return {
      what: 'topper',
      fromAt: marks.topperAt ?? marks.tackFreeAt,
      untilAt: marks.topperClosesAt,
      leaving,
    }
  if (over)
    return {
      what: 'layer',
      fromAt: marks.recoatOpensAt ?? marks.tackFreeAt,
      untilAt: marks.recoatClosesAt,
      leaving,
    }
  return { what: 'leave', fromAt: leavingTimes(steps, products, leaving).safeAt, untilAt: null, leaving }
}
