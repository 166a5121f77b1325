/** Purchase orders as they stand, for the screens and for the documents. */
import { dateOf, dayNumber } from '../../../domain/calendar/index.ts'
import { sumMinor, timesMinor } from '../../../domain/money/index.ts'
import { refuse } from '../../../domain/refusal.ts'
import { unitsOf, workingDayOf, workingDaysBetween } from '../../../domain/shelf/index.ts'
import type { Tx } from '../../../store/store.ts'
import type { Desk } from '../../desk/desk.ts'
import { type ShelfDay, shelfDay } from '../countedProducts.ts'
import { nearDayWords } from '../lotViews.ts'
import { supplierOf } from '../suppliers.ts'
import type { ShelfUnit } from '../views/lots.ts'
import type { OrderStatus, OrderView } from '../views/orders.ts'
import { moneyWords } from '../words.ts'

const withAll = {
  supplier: true,
  lines: {
    orderBy: { position: 'asc' },
    include: { product: { include: { shelf: true } }, size: true },
  },
  messages: { orderBy: { at: 'asc' } },
} as const

/** An order's row with all that belongs to it. */
export function orderRows(tx: Tx, where: { id?: string; status?: { in: string[] } }) {
  return tx.purchaseOrder.findMany({ where, include: withAll, orderBy: { number: 'desc' } })
}

export type OrderRow = Awaited<ReturnType<typeof orderRows>>[number]

/** One order, refused where it is not there. */
export async function orderRow(tx: Tx, id: string): Promise<OrderRow> {
  const [row] = await orderRows(tx, { id })
  if (!row) refuse('missing', { id }, 'This order is not there; look at the list again.')
  return row
}

/** Closed orders shown, beside all that are open. */
const closedShown = 60

/** The open orders and those closed last, newest first. */
export async function listOrders(desk: Desk): Promise<OrderView[]> {
  const tx = desk.store.read
  const ground = await shelfDay(tx, desk.now())
  const open = await orderRows(tx, { status: { in: ['draft', 'sent', 'partly'] } })
  const closed = await tx.purchaseOrder.findMany({
    where: { status: { in: ['received', 'cancelled'] } },
    include: withAll,
    orderBy: { number: 'desc' },
    take: closedShown,
  })
  return [...open, ...closed].map(row => orderView(row, ground))
}

export async function getOrder(desk: Desk, input: { id: string }): Promise<OrderView> {
  const tx = desk.store.read
  return orderView(await orderRow(tx, input.id), await shelfDay(tx, desk.now()))
}

/** What an order's goods cost. */
export function goodsOf(row: Pick<OrderRow, 'lines'>): number {
  return sumMinor(row.lines.map(line => timesMinor(line.packPriceMinor, line.packs)))
}

export function orderView(row: OrderRow, ground: ShelfDay): OrderView {
  const goodsMinor = goodsOf(row)
  const { id, number, version, supplierId, note, createdAt, sentAt, expectedOn, lateFromOn, carriageMinor } =
    row
  return {
    id,
    number,
    version,
    status: row.status as OrderStatus,
    supplierId,
    supplierName: row.supplier.name,
    supplierEmail: row.supplier.email,
    note,
    lines: row.lines.map(line => {
      const orderedContainers = line.packs * line.containersPerPack
      return {
        id: line.id,
        productId: line.productId,
        productName: line.product.name,
        unit: (line.product.shelf?.unit ?? 'piece') as ShelfUnit,
        sizeId: line.sizeId,
        sizeLabel: line.size.label,
        article: line.article,
        packs: line.packs,
        packAmount: unitsOf(line.packCenti),
        containersPerPack: line.containersPerPack,
        packPriceMinor: line.packPriceMinor,
        lineMinor: timesMinor(line.packPriceMinor, line.packs),
        orderedContainers,
        receivedContainers: line.receivedContainers,
        openContainers: Math.max(0, orderedContainers - line.receivedContainers),
        why: line.why as string[],
      }
    }),
    goodsMinor,
    carriageMinor,
    totalMinor: goodsMinor + carriageMinor,
    currency: ground.currency,
    createdAt,
    sentAt,
    expectedOn,
    lateFromOn,
    late: lateness(row, ground),
    notes: conditionNotes(row.supplier, goodsMinor, ground.currency),
    messages: row.messages.map(({ orderId: _, kind, ...message }) => ({
      ...message,
      kind: kind as 'order' | 'chase',
    })),
    pdfPath: `/documents/order/${id}.pdf`,
  }
}

/** How late an open order is, counted in the supplier's working days; null while it may still come in time. */
export function lateness(
  row: Pick<OrderRow, 'status' | 'expectedOn' | 'supplier' | 'messages'>,
  { date, day, zone }: ShelfDay,
): OrderView['late'] {
  if ((row.status !== 'sent' && row.status !== 'partly') || row.expectedOn === null || row.expectedOn >= date)
    return null
  const days = workingDaysBetween(dayNumber(row.expectedOn), day, workingDayOf(supplierOf(row.supplier)))
  if (days === 0) return null
  const chased = row.messages.findLast(message => message.kind === 'chase' && message.failure === null)
  const words = [
    `due ${nearDayWords(row.expectedOn, day)}, ${days} working ${days === 1 ? 'day' : 'days'} late`,
    chased && `asked after it ${nearDayWords(dateOf(chased.at, zone), day)}`,
  ]
  return { days, words: words.filter(Boolean).join('; ') }
}

/** What the supplier's conditions say about goods of this value. */
export function conditionNotes(
  supplier: { name: string; minimumOrderMinor: number; freeCarriageFromMinor: number | null },
  goodsMinor: number,
  currency: string,
): string[] {
  const notes: string[] = []
  const under = supplier.minimumOrderMinor - goodsMinor
  if (under > 0)
    notes.push(
      `${moneyWords(under, currency)} under the minimum of ${supplier.name} ` +
        `(${moneyWords(supplier.minimumOrderMinor, currency)}).`,
    )
  const free = supplier.freeCarriageFromMinor
  if (free !== null && goodsMinor < free)
    notes.push(`${moneyWords(free - goodsMinor, currency)} more of goods make the carriage free.`)
  return notes
}

/** Carriage of an order with goods of this value. */
export function carriageFor(
  supplier: { carriageMinor: number; freeCarriageFromMinor: number | null },
  goodsMinor: number,
): number {
  const free = supplier.freeCarriageFromMinor
  return goodsMinor === 0 || (free !== null && goodsMinor >= free) ? 0 : supplier.carriageMinor
}
