/**
 * The textbook formulas of stock keeping. The policy does better where demand is lumpy or booked, but these are what an
 * owner can follow with a pocket calculator: they bound the policy's search and stand beside its numbers on the screen.
 * All of them take any one unit of amount and any one unit of time.
 */
import { refuse } from '../refusal.ts'
import { normalLoss, normalQuantile, normalShare } from './normal.ts'

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

/** Share of demand met from stock when `quantity` is ordered at a point `z` spreads above the expected use: 1 − σ L(z) / Q. */
export function fillRate(
  leadTimeDemandSd: number,
  quantity: number,
  z: number,
): { fillRate: number; cycleServiceLevel: number } {
  checkAbove(quantity, 'quantity')
  return { fillRate: 1 - (leadTimeDemandSd * normalLoss(z)) / quantity, cycleServiceLevel: normalShare(z) }
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

export interface UnitPriceBreak {
  /** Units from which the price holds for the whole order. */
  readonly from: number
  readonly price: number
}

/**
 * The cheapest order size under all-units discounts, holding costed at a share of the price: the least of each price's
 * economic quantity, moved up to where that price begins, if it does not reach into the next price's range.
 */
export function quantityWithBreaks(
  demandPerYear: number,
  orderCost: number,
  holdingRate: number,
  breaks: readonly UnitPriceBreak[],
): { quantity: number; price: number; yearlyCost: number } {
  if (breaks.length === 0) refuse('breaks-empty', { breaks }, 'Give at least one price.')
  const options = breaks.flatMap(({ from, price }, i) => {
    const economic = economicQuantity(demandPerYear, orderCost, holdingRate * price).quantity
    const quantity = Math.max(from, economic)
    if (quantity >= (breaks[i + 1]?.from ?? Number.POSITIVE_INFINITY)) return []
    const yearlyCost =
      demandPerYear * price + (demandPerYear / quantity) * orderCost + (quantity / 2) * holdingRate * price
    return [{ quantity, price, yearlyCost }]
  })
  return options.reduce((a, b) => (b.yearlyCost < a.yearlyCost ? b : a))
}

/**
 * How much to have for one season that must not leave too much over: the demand quantile at the critical ratio
 * u / (u + o), for normal demand.
 */
export function singleSeasonQuantity(
  mean: number,
  sd: number,
  underageCost: number,
  overageCost: number,
): { criticalRatio: number; quantity: number } {
  checkAbove(underageCost, 'underageCost')
  checkAbove(overageCost, 'overageCost')
  const criticalRatio = underageCost / (underageCost + overageCost)
  return { criticalRatio, quantity: mean + sd * normalQuantile(criticalRatio) }
}

/** The least number of whole packs' content that meets both a need and a minimum order. */
export function roundUpToPack(need: number, packSize: number, minimumOrder = 0): number {
  checkAbove(packSize, 'packSize')
  return Math.ceil(Math.max(need, minimumOrder, 0) / packSize) * packSize
}

function checkAbove(value: number, field: string): void {
  if (!(value > 0)) refuse('not-positive', { [field]: value }, `${field} is ${value}; give a number above 0.`)
}
