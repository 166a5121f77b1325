/** The demo's orders: three that came, from which the shelf has learned how long one supplier takes, and one that is late. */
import { atWall, dateOf, dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import { afterWorkingDays, centiOf, workingDayOf } from '../../domain/shelf/index.ts'
import type { Tx } from '../../store/store.ts'
import { dueDays } from '../shelf/orders/dueDays.ts'
import { demoStock, demoSuppliers } from './shelfData.ts'

interface DemoOrder {
  supplierId: string
  productId: string
  packs: number
  /** Days before today it was sent. */
  sentAgo: number
  /** Working days it took; null: it is not here yet. */
  took: number | null
}

const demoOrders: DemoOrder[] = [
  { supplierId: 'demo-carrow', productId: 'demo-ovrel-two', packs: 6, sentAgo: 71, took: 3 },
  { supplierId: 'demo-carrow', productId: 'demo-foam', packs: 1, sentAgo: 43, took: 4 },
  { supplierId: 'demo-carrow', productId: 'demo-ovrel-two', packs: 6, sentAgo: 29, took: 2 },
  { supplierId: 'demo-dunvarrow', productId: 'demo-cut', packs: 3, sentAgo: 17, took: null },
]

export async function writeOrders(tx: Tx, nowAt: number, zone: string): Promise<void> {
  const today = dayNumber(dateOf(nowAt, zone))
  for (const [i, order] of demoOrders.entries()) {
    const supplier = demoSuppliers.find(each => each.id === order.supplierId)!
    const stock = demoStock.find(each => each.productId === order.productId)!
    const works = workingDayOf(supplier)
    const sent = afterWorkingDays(today - order.sentAgo, 0, works)
    const sentAt = atWall(dateOfDay(sent), 9 * 60 + 40, zone)
    const lead = { meanDays: supplier.leadMeanDays, sdDays: supplier.leadSdDays }
    const due = dueDays({ ...supplier, lead }, lead, sentAt, zone)
    const cameAt =
      order.took === null ? null : atWall(dateOfDay(afterWorkingDays(sent, order.took, works)), 10 * 60, zone)
    const goods = order.packs * stock.packPriceMinor
    await tx.purchaseOrder.create({
      data: {
        id: `demo-order-${i + 1}`,
        number: i + 1,
        supplierId: order.supplierId,
        status: cameAt === null ? 'sent' : 'received',
        createdAt: sentAt - 12,
        sentAt,
        expectedOn: due.expectedOn,
        lateFromOn: due.lateFromOn,
        firstReceivedAt: cameAt,
        closedAt: cameAt,
        carriageMinor: goods >= supplier.freeCarriageFromMinor ? 0 : supplier.carriageMinor,
        lines: {
          create: {
            id: `demo-order-${i + 1}-line`,
            position: 0,
            productId: order.productId,
            sizeId: `demo-size-${order.productId}`,
            article: stock.article,
            packs: order.packs,
            packCenti: centiOf(stock.measured ?? stock.content) * stock.containersPerPack,
            containersPerPack: stock.containersPerPack,
            packPriceMinor: stock.packPriceMinor,
            receivedContainers: cameAt === null ? 0 : order.packs * stock.containersPerPack,
            why: ['What was left had fallen under what two weeks usually take.'],
          },
        },
      },
    })
  }
}
