/** Which sizes of order are worth trying, and from which level each may join another product's order. */
import type { Demand } from './demand.ts'
import { type OrderCost, packPriceMinor } from './orderCosts.ts'
import type { PriceBreak } from './supplier.ts'
import { economicQuantity } from './textbook.ts'

// No shop wants more than this of a product on its shelf; it bounds the search.
const MOST_CELLS = 480
const JOIN_PARTS = [1 / 3, 2 / 3, 1]

/** What bounds an order; each as in the policy's input. */
interface Bounds {
  readonly demand: Demand
  readonly packCenti: number
  readonly breaks: readonly PriceBreak[]
  readonly orderCost: OrderCost
  readonly holdRatePerDay: number
  readonly lifeDays: number | null
}

/**
 * Packs beyond which a larger order cannot pay: what will be used before it expires, and three times the classical
 * economic quantity, the highest price break or free carriage, whichever is more.
 */
export function packsWorthTrying(input: Bounds, packCells: number): number {
  const { demand, packCenti, breaks, orderCost, lifeDays } = input
  const packPrice = packPriceMinor(breaks, 1)
  const costOfOrder = orderCost.carriageMinor + orderCost.lineMinor
  const packsPerDay = demand.perDayCenti / packCenti
  const economic =
    costOfOrder === 0
      ? 1
      : economicQuantity(packsPerDay, costOfOrder, packPrice * input.holdRatePerDay).quantity
  const highestBreak = Math.max(...breaks.map(entry => entry.fromPacks))
  const freeFrom = orderCost.freeFromMinor === null ? 0 : Math.ceil(orderCost.freeFromMinor / packPrice)
  const worth = Math.max(highestBreak, Math.ceil(3 * economic), Math.min(freeFrom, Math.ceil(8 * economic)))
  const used = lifeDays === null ? worth : Math.floor((demand.perDayCenti * lifeDays) / packCenti)
  return Math.max(1, Math.min(worth, used, Math.floor(MOST_CELLS / packCells)))
}

/** Every size up to 6 packs, then coarser steps, and every price break: the cost is flat around its least. */
export function sizesToTry(most: number, breaks: readonly PriceBreak[]): number[] {
  const sizes = new Set(breaks.map(entry => entry.fromPacks).filter(packs => packs <= most))
  for (let packs = 1; packs <= most; packs = Math.max(packs + 1, Math.floor(packs * 1.3))) sizes.add(packs)
  return [...sizes].sort((a, b) => a - b)
}

/** Cells above the order point below which an order of so many packs may join another's; 0: never. */
export function joinLevels(joinChance: number, packs: number, packCells: number): number[] {
  if (joinChance === 0 || packs === 1) return [0]
  return [0, ...JOIN_PARTS.map(part => Math.round(part * (packs - 1) * packCells))]
}
