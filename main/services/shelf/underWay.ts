/** Goods ordered and not here yet, and how each product is bought. */
import { dateOf, dateOfDay, dayNumber, wallMinuteOf } from '../../domain/calendar/index.ts'
import {
  type Delivery,
  deliveryWindow,
  type LeadTime,
  type Offer,
  orderDay,
  type Supplier,
} from '../../domain/shelf/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Counted, ShelfDay } from './countedProducts.ts'
import type { ServiceClass } from './inputs.ts'
import { offerOf, offerRows } from './supplierOffers.ts'
import { learnedLeads, supplierOf } from './suppliers.ts'

/** How one product is bought, with how long that takes. */
export interface Buying {
  readonly productId: string
  readonly offer: Offer & { readonly id: string }
  readonly supplier: Supplier
  readonly lead: LeadTime
  readonly service: number
}

export interface UnderWay extends Delivery {
  readonly orderNumber: number
}

/** The suppliers in use with the lead time each is to be reckoned with: as its deliveries have shown, else as entered. */
export async function suppliersInUse(
  tx: Tx,
  zone: string,
): Promise<Map<string, { supplier: Supplier; lead: LeadTime }>> {
  const rows = await tx.supplier.findMany({ where: { archivedAt: null } })
  const learned = await learnedLeads(tx, zone)
  return new Map(
    rows.map(row => {
      const entered = supplierOf(row)
      const lead = learned.get(row.id) ?? entered.lead
      return [row.id, { supplier: { ...entered, lead }, lead }]
    }),
  )
}

/** How each product is bought: by its preferred offer, else by the first there is. */
export async function buyingsOf(
  tx: Tx,
  suppliers: Awaited<ReturnType<typeof suppliersInUse>>,
  products: ReadonlyMap<string, Counted>,
  services: Readonly<Record<ServiceClass, number>>,
): Promise<Map<string, Buying>> {
  const buyings = new Map<string, Buying>()
  for (const row of await offerRows(tx)) {
    const product = products.get(row.productId)
    const found = suppliers.get(row.supplierId)
    if (!product || !found || buyings.has(row.productId)) continue
    buyings.set(row.productId, {
      productId: row.productId,
      offer: { ...offerOf(row), id: row.id },
      ...found,
      service: services[product.serviceClass],
    })
  }
  return buyings
}

/** What is under way of each product, with the days it may arrive. */
export async function underWay(
  tx: Tx,
  ground: ShelfDay,
  suppliers: Awaited<ReturnType<typeof suppliersInUse>>,
  buyings: ReadonlyMap<string, Buying>,
): Promise<Map<string, UnderWay[]>> {
  const orders = await tx.purchaseOrder.findMany({
    where: { status: { in: ['sent', 'partly'] } },
    include: { lines: true, supplier: true },
  })
  const byProduct = new Map<string, UnderWay[]>()
  for (const order of orders) {
    const supplier = suppliers.get(order.supplierId)?.supplier ?? supplierOf(order.supplier)
    const sentAt = order.sentAt ?? ground.nowAt
    const placed = orderDay(
      supplier,
      dayNumber(dateOf(sentAt, ground.zone)),
      wallMinuteOf(sentAt, ground.zone),
    )
    const window = deliveryWindow(
      supplier,
      { placedOn: dateOfDay(placed), promisedOn: order.promisedOn },
      ground.day,
    )
    for (const line of order.lines) {
      const open = line.packs * line.containersPerPack - line.receivedContainers
      if (open <= 0) continue
      const life = buyings.get(line.productId)?.offer.shelfLifeDays ?? null
      const list = byProduct.get(line.productId) ?? []
      list.push({
        orderId: order.id,
        orderNumber: order.number,
        ...window,
        centi: Math.round((open * line.packCenti) / line.containersPerPack),
        lastDay: life === null ? null : window.likelyDay + life,
      })
      byProduct.set(line.productId, list)
    }
  }
  return byProduct
}
