/**
 * What the screens of booking, board, jobs and morning are given: plain JSON. Points in time are epoch minutes
 * (`...At`), days `YYYY-MM-DD` of the shop's zone, money minor units, crew and bays by name where they are only read.
 */
import type { Span } from '../domain/calendar/index.ts'
import type { CureProfile } from '../domain/cure/index.ts'
import type { Capability, Condition, Finish, Skill, Stage } from '../domain/shop/words.ts'
import type { SizeClass } from '../domain/vehicle/index.ts'
import type { ShelfAvailability } from './shelf/views/value.ts'

export type * from './jobViews.ts'
export type * from './morningViews.ts'
export type { Capability, Condition, Finish, ShelfAvailability, SizeClass, Skill, Stage }

export type JobStatus = 'held' | 'booked' | 'inShop' | 'handedOver' | 'cancelled' | 'lapsed'

/** How well the time from the coat to a moment is known, in minutes. */
export interface CureParts {
  measuredMin: number
  assumedMin: number
  projectedMin: number
}

/** The running clock of a coat that is laid. */
export interface CureClockView {
  /** Up to here it knows the temperatures; from here it projects them. */
  knownUntilAt: number
  /** Minutes of cure at the profile's reference temperature, reached by then. */
  ageMin: number
  untilNow: CureParts
  /** Of the time from the coat to the earliest handover. */
  untilSafe: CureParts
  /** The cure age over time, as points to be joined by straight lines; the last two go on for ever. */
  ages: [at: number, ageMin: number][]
  /** The temperature projected from now on, and who says so. */
  usualC: number
  usualFrom: 'set' | 'last week' | 'profile'
  /** A recorded heated cure counts, by a row of the data sheet. */
  heated: boolean
  /** In this cold a moment below is never reached; it is then given as years away. */
  stalled: boolean
}

/** The moments of one coat's cure, counted from its planned end, or from the actual one once the coat is laid. */
export interface CureMarks {
  productName: string
  coatEndAt: number
  /** The coat is really laid: the times below are the running clock, not a plan. */
  actual: boolean
  /** Null while the coat is only planned. */
  clock: CureClockView | null
  tackFreeAt: number
  recoatOpensAt: number | null
  recoatClosesAt: number | null
  /** The earliest a topper may follow; null for a product nothing is put on (a topper itself). */
  topperAt: number | null
  topperAdvisedAt: number | null
  topperClosesAt: number | null
  safeAt: number
  advisedAt: number
  keepDryEndsAt: number
  firstWashAt: number
  fullCureAt: number
}

/** A piece of a stay; pieces of one stay follow each other without gaps. */
export interface BlockView {
  /** The step's position in its job; for a wait, that of the step before it. */
  position: number
  kind: 'work' | 'hold' | 'wait'
  name: string
  /** prepare, correct, wipe, coat, topper, finish; empty for a wait. */
  stage: string
  fromAt: number
  toAt: number
  /** Names. */
  crew: string[]
  state: 'planned' | 'running' | 'done'
  productId: string | null
  /** For a hold after a coat or topper, and for the wait that follows it. */
  cure: CureMarks | null
}

/** What a car that cures may have done next, by its profile: from when, and until when where a window closes. */
export interface NextThingView {
  what: 'touch' | 'layer' | 'topper' | 'leave'
  fromAt: number
  untilAt: number | null
}

/** The unbroken time one car holds one bay. A job has one or several, in order. */
export interface StayView {
  jobId: string
  jobNumber: number
  version: number
  status: JobStatus
  bayId: string
  bayName: string
  fromAt: number
  toAt: number
  plate: string
  customerName: string
  vehicleWords: string
  /** The first step that starts in this stay, as `board.tryMove` takes it; null: a hold carried over from another bay. */
  position: number | null
  blocks: BlockView[]
  /** The projected handover is after the promised one. */
  late: boolean
  promisedAt: number
  handoverAt: number
  /** In words, what else wants this bay or these people at the same time. Null: nothing does. */
  conflict: string | null
  /** Where the car now stands in this stay with a coat on it. */
  next: NextThingView | null
  /** Nothing in this stay has started, so it may be dragged. */
  movable: boolean
}

export interface BoardView {
  fromAt: number
  toAt: number
  nowAt: number
  zone: string
  gridMin: number
  open: Span[]
  bays: {
    id: string
    name: string
    capabilities: Capability[]
    closures: { fromAt: number; toAt: number; reason: string }[]
  }[]
  stays: StayView[]
  /** The cure profiles of the products in `stays`, by product id. */
  profiles: Record<string, CureProfile>
}

/** A plan as it travels from an offer to the hold: everything else is laid out again and checked by the server. */
export interface PlanView {
  steps: {
    bayId: string
    startAt: number
    endAt: number
    crewIds: string[]
    /** The one move inside a hold. */
    moved: { bayId: string; at: number } | null
  }[]
  handoverAt: number
}

export interface OfferStayView {
  bayId: string
  bayName: string
  fromAt: number
  toAt: number
  blocks: BlockView[]
}

export interface OfferView {
  feasible: true
  plan: PlanView
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

export type MoveView =
  | {
      ok: true
      /** All stays of the job as they would be. */
      stays: StayView[]
      handoverAt: number
      promiseKept: boolean
      /** What changes, in words. */
      words: string[]
    }
  | { ok: false; reasons: string[]; nearest: { bayId: string; startAt: number } | null }
