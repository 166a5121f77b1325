import type { ShelfUnit } from './lots.ts'

export interface ProductValueView {
  productId: string
  productName: string
  unit: ShelfUnit
  onHand: number
  /** By weighted average, and by first in, first out. */
  averageMinor: number
  fifoMinor: number
  /** Average cost of 100 units (100 ml), in minor units with decimals; null with nothing on hand. */
  per100Minor: number | null
  /** The price of 100 units by size and offer, cheapest first. */
  sizes: { sizeLabel: string; supplierName: string; per100Minor: number; words: string }[]
}

export interface WriteOffView {
  at: number
  by: string
  productId: string
  productName: string
  unit: ShelfUnit
  amount: number
  why: string
  averageMinor: number
  fifoMinor: number
}

export interface JobCostView {
  jobId: string
  jobNumber: number
  plate: string
  /** The day of the last draw. */
  date: string
  averageMinor: number
  fifoMinor: number
  lines: { productName: string; unit: ShelfUnit; amount: number; averageMinor: number; fifoMinor: number }[]
}

export interface ShelfValueView {
  date: string
  currency: string
  averageMinor: number
  fifoMinor: number
  products: ProductValueView[]
  /** Of the last 365 days, newest first. */
  writeOffs: WriteOffView[]
  writeOffAverageMinor: number
  writeOffFifoMinor: number
  /** Of the last 90 days, newest first. */
  jobs: JobCostView[]
}

/** What an offer knows of the shelf. */
export interface ShelfAvailability {
  /** Goods that would lack by the place offered, each with the earliest day they could be there; empty: all there. */
  short: {
    productId: string
    productName: string
    need: number
    have: number
    unit: ShelfUnit
    holdsUp: boolean
    couldBeThere: string | null
  }[]
  /** The same in one line; null where nothing lacks. */
  words: string | null
  /** What to put on today's order for it. */
  proposal: { supplierId: string; supplierName: string; offerId: string; packs: number; words: string }[]
}
