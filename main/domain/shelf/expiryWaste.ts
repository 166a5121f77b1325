/** What a rule loses to expiry dates. */
import type { Chances } from './chances.ts'
import type { Demand } from './demand.ts'
import { normalLoss } from './normal.ts'
import { expectedUnforeseen } from './serviceAtPoint.ts'

// A rule that wastes all it buys would need no end of orders; past this share the cost has long ruled it out.
const MOST_WASTED = 0.9

/**
 * Expected part of one order that outlives its date: what is left of the position `topCenti` after the use of the
 * order's life, but no more than the order itself, for what stood before it expires before it.
 */
export function expectedWaste(
  { demand, cover, lifeDays }: { demand: Demand; cover: Chances; lifeDays: number | null },
  topCenti: number,
  orderCenti: number,
): number {
  if (lifeDays === null) return 0
  const mean = expectedUnforeseen(demand, cover) + demand.perDayCenti * Math.max(0, lifeDays - 1)
  const sd = Math.sqrt(demand.perDayVariance * Math.max(1, lifeDays))
  const leftOf = (centi: number) =>
    sd === 0 ? Math.max(0, centi - mean) : sd * normalLoss((mean - centi) / sd)
  return Math.min(orderCenti * MOST_WASTED, leftOf(topCenti) - leftOf(topCenti - orderCenti))
}
