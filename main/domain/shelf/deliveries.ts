/** Orders on their way: when they can be expected, what is still open, which are late and what to write. */

import { dateOfDay, dayNumber } from '../calendar/index.ts'
import { refuse } from '../refusal.ts'
import type { Supplier } from './supplier.ts'
import {
  afterWorkingDays,
  leadChances,
  nextWorkingDay,
  workingDayOf,
  workingDaysBetween,
} from './workingDays.ts'

export interface OpenLine {
  readonly productId: string
  readonly sizeId: string
  readonly packs: number
  readonly receivedPacks: number
  readonly packCenti: number
}

export interface OpenOrder {
  readonly id: string
  readonly supplierId: string
  /** Date the order counts for. */
  readonly placedOn: string
  /** Date the supplier promised; null where it named none. */
  readonly promisedOn: string | null
  readonly lines: readonly OpenLine[]
}

export interface DeliveryWindow {
  readonly earlyDay: number
  readonly likelyDay: number
  readonly lateDay: number
}

/**
 * When an order should arrive, in day numbers: the middle, and the days that one delivery in ten is before or after. An
 * order still not here by the end of `today` can only come later: its chances are those of the leads longer than that.
 * A promised date in the future moves the middle there, and the late edge with it.
 */
export function deliveryWindow(
  supplier: Supplier,
  order: Pick<OpenOrder, 'placedOn' | 'promisedOn'>,
  today: number,
): DeliveryWindow {
  const works = workingDayOf(supplier)
  const placed = nextWorkingDay(dayNumber(order.placedOn, 'placedOn'), works)
  const chances = leadChances(supplier.lead)
  const passed = today < placed ? 0 : workingDaysBetween(placed, today, works)
  const left = chances.reduce((sum, chance, days) => (days > passed ? sum + chance : sum), 0)
  const quantile = (share: number) => {
    // Later than the supplier ever was: expect it on the next working day and allow as long again as its lead.
    if (left < 1e-6) return passed + (share > 0.5 ? Math.ceil(supplier.lead.meanDays) : 1)
    let sum = 0
    for (let days = passed + 1; days < chances.length; days++) {
      sum += chances[days]!
      if (sum >= share * left - 1e-12) return days
    }
    return chances.length - 1
  }
  const on = (days: number) => afterWorkingDays(placed, days, works)
  const window = { earlyDay: on(quantile(0.1)), likelyDay: on(quantile(0.5)), lateDay: on(quantile(0.9)) }
  const promised = order.promisedOn === null ? null : dayNumber(order.promisedOn, 'promisedOn')
  if (promised === null || promised <= today) return window
  return {
    earlyDay: Math.min(window.earlyDay, promised),
    likelyDay: promised,
    lateDay: Math.max(promised, promised + window.lateDay - window.likelyDay),
  }
}

export type OrderProgress = 'open' | 'part' | 'complete'

/** How far an order has come. */
export function progressOf(order: OpenOrder): OrderProgress {
  if (order.lines.every(line => line.receivedPacks >= line.packs)) return 'complete'
  return order.lines.some(line => line.receivedPacks > 0) ? 'part' : 'open'
}

/** The order with packs of one line received; more than is open is refused. */
export function received(order: OpenOrder, sizeId: string, packs: number): OpenOrder {
  const line = order.lines.find(entry => entry.sizeId === sizeId)
  if (!line) refuse('not-ordered', { sizeId }, 'This order has no such item; receive it without an order.')
  const open = line.packs - line.receivedPacks
  if (!Number.isInteger(packs) || packs < 1 || packs > open)
    refuse(
      'packs-bad',
      { packs },
      `${packs} cannot be received: ${open} of ${line.packs} packs are open; give 1 to ${open}, ` +
        'and receive what was not ordered without an order.',
    )
  const lines = order.lines.map(entry =>
    entry === line ? { ...entry, receivedPacks: entry.receivedPacks + packs } : entry,
  )
  return { ...order, lines }
}

/** Amount of a product still to come with an order, in centi. */
export function stillComing(order: OpenOrder, productId: string): number {
  return order.lines.reduce(
    (sum, line) =>
      line.productId === productId ? sum + (line.packs - line.receivedPacks) * line.packCenti : sum,
    0,
  )
}

export interface LateOrder {
  readonly orderId: string
  readonly supplierId: string
  /** Date it was promised for, or nine in ten of this supplier's deliveries were here by. */
  readonly dueOn: string
  readonly promised: boolean
  /** Working days of the supplier since then. */
  readonly daysLate: number
  /** Date to expect it on now. */
  readonly expectedOn: string
  readonly text: string
}

/** Orders past their promised day, or past what nine in ten deliveries of the supplier took; the latest first. */
export function lateOrders(
  orders: readonly OpenOrder[],
  suppliers: readonly Supplier[],
  todayDate: string,
): LateOrder[] {
  const today = dayNumber(todayDate, 'today')
  return orders
    .flatMap((order): LateOrder[] => {
      const supplier = suppliers.find(entry => entry.id === order.supplierId)
      if (!supplier || progressOf(order) === 'complete') return []
      const usual = deliveryWindow(supplier, { ...order, promisedOn: null }, dayNumber(order.placedOn) - 1)
      const due = order.promisedOn === null ? usual.lateDay : dayNumber(order.promisedOn)
      if (due >= today) return []
      const daysLate = workingDaysBetween(due, today, workingDayOf(supplier))
      if (daysLate === 0) return []
      const dueOn = dateOfDay(due)
      const expectedOn = dateOfDay(deliveryWindow(supplier, order, today).likelyDay)
      const promised = order.promisedOn !== null
      return [{ orderId: order.id, supplierId: supplier.id, dueOn, promised, daysLate, expectedOn, text: '' }]
    })
    .map(late => ({ ...late, text: lateText(late) }))
    .sort((a, b) => b.daysLate - a.daysLate || (a.orderId < b.orderId ? -1 : 1))
}

function lateText(late: Omit<LateOrder, 'text'>): string {
  const days = late.daysLate === 1 ? '1 working day' : `${late.daysLate} working days`
  const due = late.promised
    ? `promised for ${late.dueOn}`
    : `due by ${late.dueOn} at this supplier's usual pace`
  return `${days} late: it was ${due}; ask for a new date, and expect it about ${late.expectedOn}.`
}
