/** What the booking screen is given: offers, and the hold that one of them became. */
import type { Span } from '../../domain/calendar/index.ts'
import type { CureProfile } from '../../domain/cure/index.ts'
import type { Plan } from '../../domain/schedule/index.ts'
import type { Skill, Stage } from '../../domain/shop/words.ts'
import type { BlockView } from '../floor/views.ts'
import type { ShelfAvailability } from '../shelf/views/value.ts'

export interface OfferStayView {
  bayId: string
  bayName: string
  fromAt: number
  toAt: number
  blocks: BlockView[]
}

/** A place for the wished job, from drop-off to handover. */
export interface PlaceView {
  feasible: true
  /** As `booking.hold` takes it. */
  plan: Plan
  stays: OfferStayView[]
  dropOffAt: number
  handoverAt: number
  /** The earliest the cure profiles let the car leave (what the data sheet says decides). */
  safeAt: number
  advisedAt: number
  /** Opening minutes the car keeps a bay while nobody works on it. */
  blockedOpenMin: number
  /** Minutes of cure outside opening hours: they cost no bay time. */
  closedCureMin: number
  moves: number
  /** What binds this offer, in words. */
  reasons: string[]
  /** Whether the chemicals would be there. */
  shelf: ShelfAvailability
}

export interface OfferView extends PlaceView {
  /** Where the offer waits for goods: the place as bays and crew allow it, and what must be here by when. */
  ifHere: { words: string; offer: PlaceView } | null
}

export interface NoOfferView {
  feasible: false
  /** What stands in the way, in words. */
  reasons: string[]
}

export interface LaidStepView {
  position: number
  kind: 'work' | 'hold'
  name: string
  stage: Stage
  minutes: number
  skill: Skill | null
  crew: number
  productId: string | null
  productName: string | null
}

export interface OffersView {
  nowAt: number
  zone: string
  gridMin: number
  steps: LaidStepView[]
  handsOnMin: number
  treatments: { id: string; name: string; priceMinor: number }[]
  priceMinor: number
  currency: string
  /** What the chain of steps wants said: matte paint, a window that leaves little room. */
  notes: string[]
  /** The opening hours that the three offers span, for their small boards. */
  open: Span[]
  /** The cure profiles of the products used, by product id. */
  profiles: Record<string, CureProfile>
  askedDate: string
  soonest: OfferView | NoOfferView
  leastBlocked: OfferView | NoOfferView
  askedDay: OfferView | NoOfferView
}

export interface HoldView {
  jobId: string
  jobNumber: number
  version: number
  heldUntilAt: number
}
