/** The stock at the end of a day, as a band: as little as one day in ten, as expected, as much as one day in ten. */
export interface ProjectedDay {
  date: string
  /** The shop is open. */
  open: boolean
  low: number
  likely: number
  high: number
  /** Booked for this day. */
  booked: number
  /** Expected to arrive, and to pass its date unused. */
  arrives: number
  expires: number
}

export interface ProjectionView {
  /** From today on. */
  days: ProjectedDay[]
  /** The day it is expected to run dry, with the job it hits. Null: not within these days. */
  runsDry: { date: string; words: string; jobId: string | null } | null
  /** The first day on which it may run dry, at the low edge of the band. */
  mayRunDry: string | null
  deliveries: { date: string; lateOn: string; amount: number; orderId: string; orderNumber: number }[]
  expiries: { date: string; amount: number; words: string }[]
}

/** One size of order and what it costs a day in the long run: a bar of the chart behind the advice. */
export interface OrderSizeView {
  packs: number
  orderPoint: number
  orderCostMinor: number
  holdCostMinor: number
  wasteCostMinor: number
  priceCostMinor: number
  totalMinor: number
  best: boolean
}

/** The numbers behind an advice; each has its sentence. */
export interface AdviceFacts {
  /** Usable, by the bottles. */
  onHand: number
  /** What steps begun or finished take of it and nobody has confirmed yet. */
  dueToday: number
  underWay: number
  booked: number
  expiring: number
  /** What is left for unforeseen use until the next delivery could be here. */
  position: number
  orderPoint: number
  safetyStock: number
  expectedUnforeseen: number
  usePerDay: number
  /** Open days until an order placed at the next chance serves. */
  coverDays: number
  /** Target and what the order point reaches. */
  service: number
  reached: number
  packAmount: number
  packPriceMinor: number
  /** `onHand`, `orderPoint` and the rest by name, with the sentence that explains each. */
  sentences: { name: string; value: string; words: string }[]
  sizes: OrderSizeView[]
  /** Chance that unforeseen use until the next delivery is at most this much: the curve behind the order point. */
  within: { amount: number; share: number }[]
}

export interface AdviceView {
  /** `check`: nothing can be advised before somebody has looked (no supplier, no history, a count in doubt). */
  kind: 'order' | 'enough' | 'onTheWay' | 'check'
  packs: number
  /** What the packs hold, in the product's unit. */
  amount: number
  costMinor: number
  supplierId: string | null
  supplierName: string | null
  /** The supplier's offer it is bought by. */
  offerId: string | null
  /** Why, in sentences; the first one says it all. */
  words: string[]
  facts: AdviceFacts | null
}
