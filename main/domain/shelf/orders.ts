import type { Advice, OrderReason } from './advise.ts'
import { packPriceMinor } from './orderCosts.ts'
import type { Offer, Supplier } from './supplier.ts'

export interface Advised {
  readonly advice: Advice
  readonly offer: Offer
}

export interface OrderLine {
  readonly productId: string
  readonly sizeId: string
  readonly packs: number
  readonly packPriceMinor: number
  readonly amountMinor: number
  readonly reason: OrderReason | 'minimum'
}

export interface ProposedOrder {
  readonly supplierId: string
  readonly lines: readonly OrderLine[]
  readonly goodsMinor: number
  readonly carriageMinor: number
  readonly totalMinor: number
  /** What is missing to the supplier's minimum; 0 when it is met. */
  readonly belowMinimumMinor: number
  /** What more goods would make the carriage free; null where it is free already or never. */
  readonly toFreeCarriageMinor: number | null
}

/** Proposes the orders of today, in the order of the suppliers given. Suppliers nothing is due from get none. */
export function proposeOrders(advised: readonly Advised[], suppliers: readonly Supplier[]): ProposedOrder[] {
  return suppliers.flatMap(supplier => {
    const own = advised.filter(({ offer }) => offer.supplierId === supplier.id)
    if (!own.some(({ advice }) => advice.packs > 0)) return []
    const packs = new Map<string, number>()
    const reasons = new Map<string, OrderLine['reason']>()
    for (const { advice } of own) {
      const count = advice.packs > 0 ? advice.packs : advice.joinPacks
      if (count === 0) continue
      packs.set(advice.productId, count)
      reasons.set(advice.productId, advice.reason ?? 'joins')
    }
    reachMinimum(own, supplier, packs, reasons)
    return [priced(own, supplier, packs, reasons)]
  })
}

/**
 * Where the goods stay under the supplier's minimum, packs are brought forward: one at a time of the product that would
 * be due soonest, as long as its expiry allows. What cannot be filled is left to a person and shown.
 */
function reachMinimum(
  own: readonly Advised[],
  supplier: Supplier,
  packs: Map<string, number>,
  reasons: Map<string, OrderLine['reason']>,
): void {
  const room = own.filter(({ advice }) => advice.daysToPoint !== null && !advice.beyondExpiry)
  for (let tries = 0; tries < 500; tries++) {
    if (goodsOf(own, packs) >= supplier.minimumOrderMinor) return
    const next = room
      .filter(entry => mayAdd(entry, packs.get(entry.advice.productId) ?? 0))
      .sort((a, b) => daysCovered(a, packs) - daysCovered(b, packs))[0]
    if (!next) return
    const { productId } = next.advice
    if (!packs.has(productId)) reasons.set(productId, 'minimum')
    packs.set(productId, (packs.get(productId) ?? 0) + 1)
  }
}

function mayAdd({ advice }: Advised, packs: number): boolean {
  return advice.mostPacks === null || packs < advice.mostPacks
}

/** Days until the product would be due again with what is on the order now. */
function daysCovered({ advice, offer }: Advised, packs: ReadonlyMap<string, number>): number {
  const ordered = (packs.get(advice.productId) ?? 0) * offer.packCenti
  return (
    (advice.daysToPoint ?? 0) +
    (advice.perDayCenti > 0 ? ordered / advice.perDayCenti : Number.POSITIVE_INFINITY)
  )
}

function priced(
  own: readonly Advised[],
  supplier: Supplier,
  packs: ReadonlyMap<string, number>,
  reasons: ReadonlyMap<string, OrderLine['reason']>,
): ProposedOrder {
  const lines = own.flatMap(({ advice, offer }): OrderLine[] => {
    const count = packs.get(advice.productId) ?? 0
    if (count <= 0) return []
    const price = packPriceMinor(offer.breaks, count)
    return [
      {
        productId: advice.productId,
        sizeId: offer.sizeId,
        packs: count,
        packPriceMinor: price,
        amountMinor: price * count,
        reason: reasons.get(advice.productId) ?? 'joins',
      },
    ]
  })
  const goodsMinor = lines.reduce((sum, line) => sum + line.amountMinor, 0)
  const { freeCarriageFromMinor: free } = supplier
  const isFree = lines.length === 0 || (free !== null && goodsMinor >= free)
  const carriageMinor = isFree ? 0 : supplier.carriageMinor
  return {
    supplierId: supplier.id,
    lines,
    goodsMinor,
    carriageMinor,
    totalMinor: goodsMinor + carriageMinor,
    belowMinimumMinor: Math.max(0, supplier.minimumOrderMinor - goodsMinor),
    toFreeCarriageMinor: isFree || free === null ? null : free - goodsMinor,
  }
}

function goodsOf(own: readonly Advised[], packs: ReadonlyMap<string, number>): number {
  return own.reduce((sum, { advice, offer }) => {
    const count = packs.get(advice.productId) ?? 0
    return sum + count * packPriceMinor(offer.breaks, Math.max(1, count))
  }, 0)
}
