/** Orders on their way: when they can be expected. */

import { dayNumber } from '../calendar/index.ts'
import { chanceOf } from './chances.ts'
import type { Supplier } from './supplier.ts'
import {
  afterWorkingDays,
  leadChances,
  nextWorkingDay,
  workingDayOf,
  workingDaysBetween,
} from './workingDays.ts'

export interface PlacedOrder {
  /** Date the order counts for. */
  readonly placedOn: string
  /** Date the supplier promised; null where it named none. */
  readonly promisedOn: string | null
}

export interface DeliveryWindow {
  readonly earlyDay: number
  readonly likelyDay: number
  readonly lateDay: number
}

/**
 * When an order should arrive, in day numbers: the middle, and the days that one delivery in ten is before or after. An
 * order still not here by the end of `today` can only come later: its chances are those of the leads longer than that.
 * A promised date in the future moves the middle there, and the late edge with it.
 */
export function deliveryWindow(supplier: Supplier, order: PlacedOrder, today: number): DeliveryWindow {
  const works = workingDayOf(supplier)
  const placed = nextWorkingDay(dayNumber(order.placedOn, 'placedOn'), works)
  const chances = leadChances(supplier.lead)
  const passed = today < placed ? 0 : workingDaysBetween(placed, today, works)
  const left = chances.reduce((sum, chance, days) => (days > passed ? sum + chance : sum), 0)
  const quantile = (share: number) => {
    // Later than the supplier ever was: expect it on the next working day and allow as long again as its lead.
    if (left < 1e-6) return passed + (share > 0.5 ? Math.ceil(supplier.lead.meanDays) : 1)
    let sum = 0
    for (let days = passed + 1; days < chances.length; days++) {
      sum += chanceOf(chances, days)
      if (sum >= share * left - 1e-12) return days
    }
    return chances.length - 1
  }
  const on = (days: number) => afterWorkingDays(placed, days, works)
  const window = { earlyDay: on(quantile(0.1)), likelyDay: on(quantile(0.5)), lateDay: on(quantile(0.9)) }
  const promised = order.promisedOn === null ? null : dayNumber(order.promisedOn, 'promisedOn')
  if (promised === null || promised <= today) return window
  return {
    earlyDay: Math.min(window.earlyDay, promised),
    likelyDay: promised,
    lateDay: Math.max(promised, promised + window.lateDay - window.likelyDay),
  }
}
