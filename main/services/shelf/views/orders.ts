import type { ShelfUnit } from './lots.ts'

export interface SupplierView {
  id: string
  version: number
  name: string
  email: string | null
  phone: string | null
  /** The number the supplier knows the shop by. */
  account: string
  note: string
  /** ISO weekdays, 1 Monday .. 7 Sunday. */
  weekdays: number[]
  closedOn: string[]
  /** Minutes after midnight until which an order counts for the same day; null: all day. */
  cutoffMin: number | null
  /** Working days from order to delivery, and their spread, as entered. */
  leadMeanDays: number
  leadSdDays: number
  /** As its deliveries have shown; null with fewer than three. */
  learnedLead: { meanDays: number; sdDays: number; deliveries: number; words: string } | null
  minimumOrderMinor: number
  carriageMinor: number
  freeCarriageFromMinor: number | null
  /** How many products are bought here, and orders under way. */
  offers: number
  openOrders: number
  archivedAt: number | null
}

export interface ProposedLine {
  offerId: string
  productId: string
  productName: string
  unit: ShelfUnit
  sizeLabel: string
  article: string
  packs: number
  packAmount: number
  containersPerPack: number
  packPriceMinor: number
  lineMinor: number
  why: string[]
}

/** What to order from one supplier, before it is a draft. */
export interface ProposedOrderView {
  supplierId: string
  supplierName: string
  supplierEmail: string | null
  lines: ProposedLine[]
  goodsMinor: number
  carriageMinor: number
  totalMinor: number
  currency: string
  /** If sent now; `expectedOn` on average, `lateFromOn` nine in ten are here before. */
  expectedOn: string
  lateFromOn: string
  /** In words: under the minimum order, what would make carriage free, order before the cut-off. */
  notes: string[]
  /** A draft for this supplier that is already there and to which the lines would be added. */
  draftId: string | null
}

export type OrderStatus = 'draft' | 'sent' | 'partly' | 'received' | 'cancelled'

export interface OrderLineView {
  id: string
  productId: string
  productName: string
  unit: ShelfUnit
  sizeId: string
  sizeLabel: string
  article: string
  packs: number
  packAmount: number
  containersPerPack: number
  packPriceMinor: number
  lineMinor: number
  /** Containers, not packs: a delivery may break one. */
  orderedContainers: number
  receivedContainers: number
  openContainers: number
  why: string[]
}

export interface OrderMessageView {
  id: string
  kind: 'order' | 'chase'
  at: number
  who: string
  to: string
  subject: string
  text: string
  /** What the mail server said where it did not go out; null: it did. */
  failure: string | null
}

export interface OrderView {
  id: string
  number: number
  version: number
  status: OrderStatus
  supplierId: string
  supplierName: string
  supplierEmail: string | null
  note: string
  lines: OrderLineView[]
  goodsMinor: number
  carriageMinor: number
  totalMinor: number
  currency: string
  createdAt: number
  sentAt: number | null
  expectedOn: string | null
  lateFromOn: string | null
  /** Overdue, in words; null where it is not. */
  late: { days: number; words: string } | null
  notes: string[]
  messages: OrderMessageView[]
  /** Where the PDF is: same origin, behind the guard. */
  pdfPath: string
}

/** A message before it is sent, for the person to change. */
export interface DraftMessageView {
  orderId: string
  version: number
  kind: 'order' | 'chase'
  to: string | null
  subject: string
  text: string
  /** What stands in the way of sending it by e-mail, in words; null: nothing. */
  cannot: string | null
}

export interface SentView {
  order: OrderView
  sent: boolean
  /** What to tell the person: sent, or why not and what to do. */
  words: string
}
