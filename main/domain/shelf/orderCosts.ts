/** What orders cost: goods at the price of their size, carriage of an order of one's own, and the handling of a line. */
import type { Standing } from './positions.ts'
import type { PriceBreak } from './supplier.ts'

/** What one order costs beside the goods. */
export interface OrderCost {
  readonly carriageMinor: number
  /** Value of goods from which the carriage is free; null: never. */
  readonly freeFromMinor: number | null
  /** Handling of one line: checking, booking in, putting away. */
  readonly lineMinor: number
}

interface Priced {
  readonly packCenti: number
  readonly breaks: readonly PriceBreak[]
}

/** A rule's orders in the long run. */
interface OrdersInLongRun {
  /** Orders a day that the point calls for, and those that join another product's. */
  readonly ownPerDay: number
  readonly joinedPerDay: number
  /** Mean size of an order. */
  readonly meanCenti: number
  /** Mean price paid. */
  readonly pricePerCenti: number
  /** Carriage and handling a day. A joined order pays no carriage: it goes out anyway. */
  readonly costPerDay: number
}

/** The orders of a rule, each counted at the price and carriage of its own size. */
export function ordersOf(
  { ownOrders, joinedOrders }: Standing,
  { packCenti, breaks, orderCost }: Priced & { readonly orderCost: OrderCost },
): OrdersInLongRun {
  let ownPerDay = 0
  let joinedPerDay = 0
  let packs = 0
  let paid = 0
  let costPerDay = 0
  ownOrders.forEach((own, size) => {
    if (size === 0) return
    const joined = joinedOrders[size] ?? 0
    const goods = size * packPriceMinor(breaks, size)
    const free = orderCost.freeFromMinor !== null && goods >= orderCost.freeFromMinor
    ownPerDay += own
    joinedPerDay += joined
    packs += (own + joined) * size
    paid += (own + joined) * goods
    costPerDay += own * (free ? 0 : orderCost.carriageMinor) + (own + joined) * orderCost.lineMinor
  })
  const meanCenti = (packs * packCenti) / (ownPerDay + joinedPerDay)
  return { ownPerDay, joinedPerDay, meanCenti, pricePerCenti: paid / packs / packCenti, costPerDay }
}

/** Price of one pack in an order of so many. `breaks` begin with the price of one pack and rise in packs. */
export function packPriceMinor(breaks: readonly PriceBreak[], packs: number): number {
  const reached = breaks.findLast(entry => packs >= entry.fromPacks) ?? breaks[0]
  return reached?.packPriceMinor ?? 0
}

/** The lowest price an order of any size pays, per centi. */
export function lowestPrice({ packCenti, breaks }: Priced): number {
  return Math.min(...breaks.map(entry => entry.packPriceMinor)) / packCenti
}
