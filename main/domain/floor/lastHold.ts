import { type Leaving, leavingAge } from '../cure/index.ts'
import { coatsOf, type ProductsById } from './cureMarks.ts'
import type { FloorStep } from './floorJobs.ts'

/** What rules the hold that a job ends with: the shop's handover figure, its grid, and how the car may leave. */
export interface HoldRule {
  readonly leaving: Leaving
  readonly rule: 'minimum' | 'advised'
  readonly gridMin: number
}

/**
 * How long the hold at the end of a chain lasts, by the profiles and what has surely passed since each coat, up to the
 * grid; null where the chain does not end with one. At least one step of the grid: a step of no minutes is none.
 */
export function lastHoldMin(
  steps: readonly FloorStep[],
  products: ProductsById,
  { leaving, rule, gridMin }: HoldRule,
): number | null {
  const last = steps.length - 1
  const coats = coatsOf(steps, products)
  if (steps[last]?.kind !== 'hold' || coats.length === 0) return null
  const left = coats.map(({ index, product }) => {
    const between = steps.slice(index + 1, last)
    const passed = between.reduce((sum, step) => sum + step.minutes + (step.waitMin ?? 0), 0)
    return leavingAge(product.cureProfile, leaving, rule) - passed
  })
  return Math.max(1, Math.ceil(Math.max(...left) / gridMin)) * gridMin
}
