/**
 * How long the shelf must last if nothing is ordered now. The order after this one can be placed at the next close of
 * day the supplier takes orders for; it arrives one lead time later and serves draws from the next open day on. Until
 * then the shop lives on what it has and on what is under way. The span is counted in the shop's open days, for on the
 * others nothing is drawn, and it is a set of chances because suppliers are late.
 */
import type { Chances } from './chances.ts'
import type { LeadTime } from './supplier.ts'
import { afterWorkingDays, leadChances, nextWorkingDay, type WorkingDay } from './workingDays.ts'

export interface CoverInput {
  /** Day number of today; the shop is about to close for the day. */
  readonly today: number
  readonly lead: LeadTime
  readonly supplierWorks: WorkingDay
  /** Whether the shop is open on a day number. */
  readonly shopOpen: WorkingDay
  /** Working days until the order after this one may be placed, at least 1: 5 for a shop that orders once a week. */
  readonly reviewDays?: number
}

/** `cover[k]`: chance that the goods of the next order serve only draws after the k-th open day from now. */
export function coverChances(input: CoverInput): Chances {
  const { today, supplierWorks, shopOpen } = input
  const nextOrder = nextShopDay(today, input.reviewDays ?? 1, shopOpen)
  const placed = nextWorkingDay(nextOrder, supplierWorks)
  return openDaysUntil(today, placed, input)
}

/** `chance[k]`: chance that goods ordered today are on the shelf only after the k-th open day from now. */
export function arrivalChances(input: CoverInput): Chances {
  return openDaysUntil(input.today, nextWorkingDay(input.today, input.supplierWorks), input)
}

function openDaysUntil(today: number, placed: number, input: CoverInput): Chances {
  const { supplierWorks, shopOpen } = input
  const chances: number[] = []
  let arrival = placed
  let counted = today
  let open = 0
  leadChances(input.lead).forEach((chance, days) => {
    if (days > 0) arrival = afterWorkingDays(arrival + 1, 0, supplierWorks)
    for (; counted < arrival; counted++) if (shopOpen(counted + 1)) open++
    while (chances.length <= open) chances.push(0)
    chances[open] = (chances[open] ?? 0) + chance
  })
  return Float64Array.from(chances)
}

function nextShopDay(today: number, count: number, shopOpen: WorkingDay): number {
  return afterWorkingDays(today + 1, count - 1, shopOpen)
}
