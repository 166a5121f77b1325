import { dateOf, dayNumber, wallMinuteOf } from '../../domain/calendar/index.ts'
import { decimalNow, say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  checkSupplier,
  type LeadTime,
  leadTimeOf,
  orderDay,
  type Supplier,
  workingDayOf,
  workingDaysBetween,
} from '../../domain/shelf/index.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { readMailAddress, readPhone } from '../../domain/vehicle/index.ts'
import type { Supplier as SupplierRow } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { ListInput, RowAccepted } from '../desk/inputs.ts'
import { archiveRow, assertNameFree, type RowSeen, restoreRow, rowsShown, saveRow } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import type { SupplierInput } from './inputs.ts'
import { offerLines } from './stillUsed.ts'

/** A supplier's row as the domain reads it. */
export function supplierOf(row: SupplierRow): Supplier {
  return {
    ...row,
    weekdays: row.weekdays as number[],
    closedOn: row.closedOn as string[],
    lead: { meanDays: row.leadMeanDays, sdDays: row.leadSdDays },
  }
}

export type SupplierView = Awaited<ReturnType<typeof listSuppliers>>[number]

/** The suppliers by name; archived ones only when asked for. */
export async function listSuppliers(desk: Desk, input?: ListInput) {
  const tx = desk.store.read
  const { zone } = await shopOf(tx)
  const rows = await tx.supplier.findMany({
    ...rowsShown(input, { name: 'asc' }),
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

interface LearnedLead extends LeadTime {
  deliveries: number
  words: string
}

/** Orders looked at: a supplier that has changed its ways is followed within so many. */
const deliveriesKept = 20

/** The lead time each supplier's last deliveries have shown, in its working days; those with fewer than three lack. */
export async function learnedLeads(tx: Tx, zone: string): Promise<Map<string, LearnedLead>> {
  const orders = await tx.purchaseOrder.findMany({
    where: { NOT: [{ sentAt: null }, { firstReceivedAt: null }] },
    orderBy: { firstReceivedAt: 'desc' },
    select: { sentAt: true, firstReceivedAt: true, supplier: true },
  })
  const leads = new Map<string, LearnedLead>()
  for (const [id, own] of Map.groupBy(orders, order => order.supplier.id)) {
    const days = own.slice(0, deliveriesKept).flatMap(({ sentAt, firstReceivedAt, supplier: row }) => {
      if (sentAt === null || firstReceivedAt === null) return []
      const supplier = supplierOf(row)
      const placed = orderDay(supplier, dayNumber(dateOf(sentAt, zone)), wallMinuteOf(sentAt, zone))
      const came = dayNumber(dateOf(firstReceivedAt, zone))
      return Math.max(1, workingDaysBetween(placed, came, workingDayOf(supplier)))
    })
    const lead = leadTimeOf(days)
    if (!lead) continue
    const meanDays = Number(lead.meanDays.toFixed(1))
    const sdDays = Number(lead.sdDays.toFixed(1))
    const words = say('{days} deliveries took {meanDays} working days on average, give or take {sdDays}', {
      days: days.length,
      meanDays: decimalNow(meanDays),
      sdDays: decimalNow(sdDays),
    })
    leads.set(id, { meanDays, sdDays, deliveries: days.length, words })
  }
  return leads
}

const keptSuppliers = (tx: Tx) => ({ table: tx.supplier, entity: 'supplier' })

/** Adds a supplier, or changes one. Orders already sent keep the day they were promised for. */
export function saveSupplier(desk: Desk, input: SupplierInput): Promise<{ id: string }> {
  return act(desk, async (tx, audit) => {
    const { country } = await shopOf(tx)
    const { id: _, version: __, ...fields } = input
    const data = {
      ...fields,
      closedOn: [...new Set(input.closedOn)].sort(),
      name: checkText(input.name, 'name', say("The supplier's name")),
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
      refuse('time-bad', { cutoffMin: data.cutoffMin }, say('Give the time of day, such as 14:00.'))
    await assertNameFree(tx.supplier, { id: input.id, name: data.name }, say('a supplier'))
    const { id } = await saveRow(audit, keptSuppliers(tx), input, { data })
    return { id }
  })
}

/** Puts a supplier away with its offers, which are asked about. Refused while an order to it is open. */
export function archiveSupplier(desk: Desk, input: RowAccepted): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const open = await tx.purchaseOrder.findMany({
      where: { supplierId: input.id, status: { in: ['draft', 'sent', 'partly'] } },
      select: { number: true },
    })
    if (open.length > 0)
      refuse(
        'orders-open',
        { id: input.id },
        say('Order {open} is open there: receive or cancel it first.', {
          open: open.map(order => order.number).join(', '),
        }),
      )
    askFirst('in-use', await offerLines(tx, { supplierId: input.id }, { others: true }), {
      field: 'id',
      lead: say('What it sells you goes with it:'),
      accepted: input.accepted,
    })
    await archiveRow(audit, keptSuppliers(tx), input, { at })
    await tx.supplierOffer.updateMany({
      where: { supplierId: input.id, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
  })
}

/** Takes a supplier back into use; what it sells is taken back offer by offer, as prices have changed since. */
export function restoreSupplier(desk: Desk, input: RowSeen): Promise<void> {
  return act(desk, async (tx, audit) => {
    await restoreRow(audit, keptSuppliers(tx), input)
    const supplier = await tx.supplier.findUniqueOrThrow({ where: { id: input.id } })
    await assertNameFree(tx.supplier, supplier, say('a supplier'))
  })
}
