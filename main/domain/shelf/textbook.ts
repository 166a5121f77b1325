/**
 * The textbook formulas of stock keeping. The policy does better where demand is lumpy or booked, but these are what an
 * owner can follow with a pocket calculator: they bound the policy's search and stand beside its numbers on the screen.
 * All of them take any one unit of amount and any one unit of time.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { normalQuantile } from './normal.ts'

export interface SafetyInput {
  readonly demandPerDay: number
  readonly demandSd: number
  readonly leadDays: number
  readonly leadSd: number
  /** Chance that a cycle ends without running dry, 0..1. */
  readonly serviceLevel: number
}

/** z √(L σd² + d² σL²) and d L above it: independent days, independent lead times. */
export function safetyStock(input: SafetyInput): { safetyStock: number; orderPoint: number } {
  const { demandPerDay, demandSd, leadDays, leadSd, serviceLevel } = input
  const spread = Math.sqrt(leadDays * demandSd ** 2 + demandPerDay ** 2 * leadSd ** 2)
  const safety = normalQuantile(serviceLevel) * spread
  return { safetyStock: safety, orderPoint: demandPerDay * leadDays + safety }
}

/** √(2 D S / H) and the yearly cost of ordering and holding at it (Harris 1913). */
export function economicQuantity(
  demandPerYear: number,
  orderCost: number,
  holdingPerUnitYear: number,
): { quantity: number; ordersPerYear: number; yearlyCost: number } {
  checkAbove(demandPerYear, 'demandPerYear')
  checkAbove(holdingPerUnitYear, 'holdingPerUnitYear')
  const quantity = Math.sqrt((2 * demandPerYear * orderCost) / holdingPerUnitYear)
  const yearlyCost = Math.sqrt(2 * demandPerYear * orderCost * holdingPerUnitYear)
  return { quantity, ordersPerYear: demandPerYear / quantity, yearlyCost }
}

function checkAbove(value: number, field: string): void {
  if (!(value > 0))
    refuse(
      'not-positive',
      { [field]: value },
      say('{field} is {value}; give a number above 0.', { field, value }),
    )
}
