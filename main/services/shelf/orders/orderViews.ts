/** Purchase orders as they stand, for the screens and for the documents. */

import { dateOf, dayNumber } from '../../../domain/calendar/index.ts'
import { say } from '../../../domain/language/index.ts'
import { moneyWords, sumMinor, timesMinor } from '../../../domain/money/index.ts'
import { refuse } from '../../../domain/refusal.ts'
import { type Unit, unitsOf, workingDayOf, workingDaysBetween } from '../../../domain/shelf/index.ts'
import type { Tx } from '../../../store/store.ts'
import type { Desk } from '../../desk/desk.ts'
import { type ShelfDay, shelfDay } from '../countedProducts.ts'
import { nearDayWords } from '../lotViews.ts'
import { supplierOf } from '../suppliers.ts'

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
  if (!row) refuse('missing', { id }, say('This order is not there; look at the list again.'))
  return row
}

/** Closed orders shown, beside all that are open. */
const closedShown = 60

/** The open orders and those closed last, newest first. */
export async function listOrders(desk: Desk) {
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

export function getOrder(desk: Desk, input: { id: string }): Promise<OrderView> {
  return orderNow(desk.store.read, input.id, desk.now())
}

/** One order as it stands. */
export async function orderNow(tx: Tx, id: string, nowAt: number): Promise<OrderView> {
  return orderView(await orderRow(tx, id), await shelfDay(tx, nowAt))
}

/** What an order's goods cost. */
export function goodsOf({ lines }: Pick<OrderRow, 'lines'>): number {
  return sumMinor(lines.map(line => timesMinor(line.packPriceMinor, line.packs)))
}

export type OrderView = ReturnType<typeof orderView>
export type OrderLineView = OrderView['lines'][number]
export type OrderStatus = 'draft' | 'sent' | 'partly' | 'received' | 'cancelled'

export function orderView(row: OrderRow, ground: ShelfDay) {
  const { supplier, carriageMinor, firstReceivedAt: _, promisedOn: __, closedAt: ___, ...order } = row
  const goodsMinor = goodsOf(row)
  return {
    ...order,
    status: row.status as OrderStatus,
    supplierName: supplier.name,
    supplierEmail: supplier.email,
    lines: row.lines.map(({ product, size, packCenti, orderId: _, position: __, ...line }) => {
      const orderedContainers = line.packs * line.containersPerPack
      return {
        ...line,
        productName: product.name,
        unit: (product.shelf?.unit ?? 'piece') as Unit,
        sizeLabel: size.label,
        packAmount: unitsOf(packCenti),
        lineMinor: timesMinor(line.packPriceMinor, line.packs),
        /** Containers, not packs: a delivery may break one. */
        orderedContainers,
        openContainers: Math.max(0, orderedContainers - line.receivedContainers),
        why: line.why as string[],
      }
    }),
    goodsMinor,
    carriageMinor,
    totalMinor: goodsMinor + carriageMinor,
    currency: ground.currency,
    /** Overdue, in words; null where it is not. */
    late: lateness(row, ground),
    notes: conditionNotes(supplier, goodsMinor, ground.currency),
    /** `failure` is what the mail server said where one did not go out; null: it did. */
    messages: row.messages.map(({ orderId: _, kind, ...message }) => ({
      ...message,
      kind: kind as 'order' | 'chase',
    })),
    /** Where the PDF is: same origin, behind the guard. */
    pdfPath: `/documents/order/${row.id}.pdf`,
  }
}

/** How late an open order is, counted in the supplier's working days; null while it may still come in time. */
export function lateness(
  row: Pick<OrderRow, 'status' | 'expectedOn' | 'supplier' | 'messages'>,
  { date, day, zone }: ShelfDay,
) {
  if ((row.status !== 'sent' && row.status !== 'partly') || row.expectedOn === null || row.expectedOn >= date)
    return null
  const days = workingDaysBetween(dayNumber(row.expectedOn), day, workingDayOf(supplierOf(row.supplier)))
  if (days === 0) return null
  const chased = row.messages.findLast(message => message.kind === 'chase' && message.failure === null)
  const words = [
    say('due {expectedOn}, {days} working {days, plural, one {day} other {days}} late', {
      expectedOn: nearDayWords(row.expectedOn, day),
      days,
    }),
    chased && say('asked after it {at}', { at: nearDayWords(dateOf(chased.at, zone), day) }),
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
      say('{under} under the minimum of {name} ({minimumOrderMinor}).', {
        under: moneyWords(under, currency),
        name: supplier.name,
        minimumOrderMinor: moneyWords(supplier.minimumOrderMinor, currency),
      }),
    )
  const free = supplier.freeCarriageFromMinor
  if (free !== null && goodsMinor < free)
    notes.push(
      say('{free} more of goods make the carriage free.', { free: moneyWords(free - goodsMinor, currency) }),
    )
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
