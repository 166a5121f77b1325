import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { dueList } from './dueList.ts'
import type { Plan } from './plan.ts'
import { startingPlans, type UpkeepStart } from './startingPlans.ts'

/** Days: three years hold one leap day, or all but; the third anniversary is within. */
const threeYears = 3 * 365 + 1

/**
 * The visits a newly coated car has ahead of it in the three years from its handover, by kind, if each is done when due.
 * Days are counted without the shop's closed days, which move a visit and never add one.
 */
export function upkeepAhead(start: UpkeepStart, zone: string): Map<Plan['kind'], number> {
  const plans = startingPlans(start, kind => kind)
  const until = dateOfDay(dayNumber(start.handoverOn, 'handoverOn') + threeYears)
  const entries = plans.map(plan => ({ plan, records: [], car: { soldOn: null, away: [] } }))
  const counts = new Map<Plan['kind'], number>()
  for (const { planId } of dueList(entries, { today: start.handoverOn, zone, until }))
    counts.set(planId as Plan['kind'], (counts.get(planId as Plan['kind']) ?? 0) + 1)
  return counts
}
