import type { SizeClass } from '../../../domain/vehicle/index.ts'
import type { AdviceView, ProjectionView } from './advice.ts'
import type { LotView, ServiceClass, ShelfUnit } from './lots.ts'
import type { ProposedOrderView } from './orders.ts'

/** What one finished step drew of one product, to be confirmed, corrected or weighed. */
export interface DrawToConfirm {
  productId: string
  productName: string
  unit: ShelfUnit
  /** By the recipe, with its spread (one standard deviation). */
  expected: number
  spread: number
  /** What to enter unless somebody knows better: the recipe, or what the bottles hold where that is less. */
  proposed: number
  /** The step between two taps of "a little more" and "a little less". */
  tap: number
  /** The bottle next in line; null where none is on the shelf. */
  lotId: string | null
  lotWords: string
  lots: LotView[]
  /** Whether a bottle can be weighed; where not, what is missing. */
  canWeigh: boolean
  weighWords: string | null
}

export interface StepToConfirm {
  jobId: string
  jobNumber: number
  /** Of the job, as `shelf.confirmDraws` takes it. */
  version: number
  position: number
  plate: string
  vehicleWords: string
  sizeClass: SizeClass
  stepName: string
  finishedAt: number
  crew: string[]
  draws: DrawToConfirm[]
}

export interface CloseProductView {
  id: string
  name: string
  kind: string
  unit: ShelfUnit
  place: string
  serviceClass: ServiceClass
  /** By the ledger, and what of it is still in date. */
  onHand: number
  usable: number
  lots: LotView[]
  openLot: LotView | null
  lastCountedAt: number | null
  projection: ProjectionView
  advice: AdviceView
  /** Products with a worry come first: 0 runs dry under a booked job, 1 to be ordered or counted, 2 nothing to do. */
  rank: 0 | 1 | 2
}

export interface ShelfWarning {
  kind: 'expired' | 'expiresSoon' | 'late' | 'runsDry' | 'storage' | 'flammable' | 'sheet'
  productIds: string[]
  orderId: string | null
  words: string
}

export interface CloseOfDayView {
  date: string
  nowAt: number
  zone: string
  currency: string
  stepsToConfirm: StepToConfirm[]
  products: CloseProductView[]
  /** What the advices come to, one order a supplier; `orders.propose` makes drafts of them. */
  orders: ProposedOrderView[]
  warnings: ShelfWarning[]
  /** What has been done today already. */
  done: { stepsConfirmed: number; counts: number; ordersSent: number }
}

/** What a confirmed step answers with. */
export interface ConfirmedView {
  version: number
  /** What was drawn from which bottle, in words. */
  words: string[]
  /** What is left to confirm today. */
  left: number
}
