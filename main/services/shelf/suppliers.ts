import { dateOf, dayNumber, wallMinuteOf } from '../../domain/calendar/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  checkSupplier,
  leadTimeOf,
  orderDay,
  type Supplier,
  workingDayOf,
  workingDaysBetween,
} from '../../domain/shelf/index.ts'
import { checkNote, checkText, checkUnique } from '../../domain/shop/index.ts'
import { readMailAddress, readPhone } from '../../domain/vehicle/index.ts'
import type { Supplier as SupplierRow } from '../../store/rows.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { changesBetween } from '../desk/changesBetween.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import type { SupplierView } from './views/orders.ts'

/** A supplier's row as the domain reads it. */
export function supplierOf(row: SupplierRow): Supplier {
  return {
    ...row,
    weekdays: row.weekdays as number[],
    closedOn: row.closedOn as string[],
    lead: { meanDays: row.leadMeanDays, sdDays: row.leadSdDays },
  }
}

/** The suppliers by name; archived ones only when asked for. */
export async function listSuppliers(
  desk: Desk,
  input?: { archived?: boolean | undefined },
): Promise<SupplierView[]> {
  const tx = desk.store.read
  const { zone } = await shopOf(tx)
  const rows = await tx.supplier.findMany({
    where: input?.archived ? {} : { archivedAt: null },
    orderBy: [{ archivedAt: { sort: 'asc', nulls: 'first' } }, { name: 'asc' }],
    include: {
      offers: { where: { archivedAt: null }, select: { id: true } },
      orders: { where: { status: { in: ['sent', 'partly'] } }, select: { id: true } },
    },
  })
  const leads = await learnedLeads(tx, zone)
  return rows.map(({ offers, orders, ...row }) => ({
    ...row,
    weekdays: row.weekdays as number[],
    closedOn: row.closedOn as string[],
    learnedLead: leads.get(row.id) ?? null,
    offers: offers.length,
    openOrders: orders.length,
  }))
}

/** Orders looked at: a supplier that has changed its ways is followed within so many. */
const deliveriesKept = 20

/** The lead time each supplier's last deliveries have shown, in its working days; those with fewer than three lack. */
export async function learnedLeads(
  tx: Tx,
  zone: string,
): Promise<Map<string, NonNullable<SupplierView['learnedLead']>>> {
  const orders = await tx.purchaseOrder.findMany({
    where: { NOT: [{ sentAt: null }, { firstReceivedAt: null }] },
    orderBy: { firstReceivedAt: 'desc' },
    select: { sentAt: true, firstReceivedAt: true, supplier: true },
  })
  const leads = new Map<string, NonNullable<SupplierView['learnedLead']>>()
  for (const [id, own] of Map.groupBy(orders, order => order.supplier.id)) {
    const supplier = supplierOf(own[0]!.supplier)
    const works = workingDayOf(supplier)
    const days = own.slice(0, deliveriesKept).map(({ sentAt, firstReceivedAt }) => {
      const placed = orderDay(supplier, dayNumber(dateOf(sentAt!, zone)), wallMinuteOf(sentAt!, zone))
      return Math.max(1, workingDaysBetween(placed, dayNumber(dateOf(firstReceivedAt!, zone)), works))
    })
    const lead = leadTimeOf(days)
    if (!lead) continue
    const meanDays = Number(lead.meanDays.toFixed(1))
    const sdDays = Number(lead.sdDays.toFixed(1))
    const words = `${days.length} deliveries took ${meanDays} working days on average, give or take ${sdDays}`
    leads.set(id, { meanDays, sdDays, deliveries: days.length, words })
  }
  return leads
}

export interface SupplierInput {
  id?: string | undefined
  version?: number | undefined
  name: string
  email: string | null
  phone: string | null
  account: string
  note: string
  weekdays: number[]
  closedOn: string[]
  cutoffMin: number | null
  leadMeanDays: number
  leadSdDays: number
  minimumOrderMinor: number
  carriageMinor: number
  freeCarriageFromMinor: number | null
}

/** Adds a supplier, or changes one. Orders already sent keep the day they were promised for. */
export function saveSupplier(desk: Desk, input: SupplierInput): Promise<{ id: string }> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const { country } = await shopOf(tx)
    const data = {
      closedOn: [...new Set(input.closedOn)].sort(),
      cutoffMin: input.cutoffMin,
      leadMeanDays: input.leadMeanDays,
      leadSdDays: input.leadSdDays,
      minimumOrderMinor: input.minimumOrderMinor,
      carriageMinor: input.carriageMinor,
      freeCarriageFromMinor: input.freeCarriageFromMinor,
      name: checkText(input.name, 'name', "The supplier's name"),
      email: input.email === null || input.email.trim() === '' ? null : readMailAddress(input.email, 'email'),
      phone:
        input.phone === null || input.phone.trim() === ''
          ? null
          : readPhone(input.phone, country, 'phone').e164,
      account: checkNote(input.account, 'account', 60),
      note: checkNote(input.note, 'note'),
      weekdays: [...new Set(input.weekdays)].sort(),
    }
    checkSupplier({ ...data, id: '', lead: { meanDays: data.leadMeanDays, sdDays: data.leadSdDays } })
    if (data.cutoffMin !== null && !(data.cutoffMin >= 0 && data.cutoffMin <= 1440))
      refuse('time-bad', { cutoffMin: data.cutoffMin }, 'Give the time of day, such as 14:00.')
    const others = await tx.supplier.findMany({ where: { archivedAt: null, NOT: { id: input.id ?? '' } } })
    checkUnique([...others.map(each => each.name), data.name], () => 'name', 'a supplier')
    if (input.id === undefined) {
      const { id } = await tx.supplier.create({ data })
      audit({ act: 'added', entity: 'supplier', entityId: id, detail: data })
      return { id }
    }
    const { id } = input
    const before = await tx.supplier.findUnique({ where: { id } })
    const { count } = await tx.supplier.updateMany({
      where: { id, version: input.version ?? 0 },
      data: { ...data, version: { increment: 1 } },
    })
    assertFresh(count, 'supplier', id)
    audit({ act: 'changed', entity: 'supplier', entityId: id, detail: changesBetween(before!, data) })
    return { id }
  })
}

/** Puts a supplier away with its offers. Refused while an order to it is open. */
export function archiveSupplier(desk: Desk, input: { id: string; version: number }): Promise<void> {
  return desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const open = await tx.purchaseOrder.findMany({
      where: { supplierId: input.id, status: { in: ['draft', 'sent', 'partly'] } },
      select: { number: true },
    })
    if (open.length > 0)
      refuse(
        'orders-open',
        { id: input.id },
        `Order ${open.map(order => order.number).join(', ')} is open there: receive or cancel it first.`,
      )
    const { count } = await tx.supplier.updateMany({
      where: { ...input, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    assertFresh(count, 'supplier', input.id)
    await tx.supplierOffer.updateMany({
      where: { supplierId: input.id, archivedAt: null },
      data: { archivedAt: desk.now(), version: { increment: 1 } },
    })
    audit({ act: 'archived', entity: 'supplier', entityId: input.id })
  })
}
