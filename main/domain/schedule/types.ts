import type { Span } from '../calendar/spans.ts'

/**
 * What the scheduler reads and answers, all JSON-plain. Time is whole minutes (epoch minutes in the app, minute 0 in
 * the reference cases); spans are half-open. Field meanings are those of the published case format; the fields
 * marked *extension* are the app's own, and a problem without them is answered exactly as the format says.
 */

/** A place a car can stand: `can` names its capabilities; nothing may stand there while it is `closed`. */
export interface Bay {
  readonly id: string
  readonly can: readonly string[]
  readonly closed: readonly Span[]
}

/** Somebody of the crew; `away` holds the opening minutes this person cannot work, booked steps included. */
export interface Person {
  readonly id: string
  readonly skills: readonly string[]
  readonly away: readonly Span[]
}

/** The unbroken time one car holds one bay. */
export interface Stay {
  readonly bay: string
  readonly from: number
  readonly to: number
  /** Extension: whose car it is, so that a refusal can say so. */
  readonly job?: string | undefined
}

interface StepBase {
  readonly minutes: number
  /** The capability its bay must have; absent or null: any bay will do. */
  readonly needs?: string | null | undefined
  /** Must stay in the bay of the step before. */
  readonly sameBay?: boolean | undefined
  /** Least elapsed minutes from the end of the step before to this start; absent or null: 0. */
  readonly waitMin?: number | null | undefined
  /** Most elapsed minutes from the end of the step before to this start; absent or null: no limit. */
  readonly waitMax?: number | null | undefined
  /** Extension: the only bays this step may use. */
  readonly bays?: readonly string[] | undefined
  /** Extension: bays taken when all objectives are equal. */
  readonly preferBays?: readonly string[] | undefined
  /** Extension: no start before this minute; with `startTo` equal to it, the start is pinned. */
  readonly startFrom?: number | null | undefined
  /** Extension: no start after this minute. */
  readonly startTo?: number | null | undefined
}

/** People who come to a step for a part of it. */
export interface Help {
  /** How many, beside those of the whole step. */
  readonly crew: number
  /** Worked minutes of the step after which they come, and how many they stay; within its minutes. */
  readonly from: number
  readonly minutes: number
}

/** Hands-on work: uses opening minutes only. */
export interface Work extends StepBase {
  readonly kind: 'work'
  /** The skill each person needs; null: nobody is taken. */
  readonly skill: string | null
  /** How many people, the same ones to the end. */
  readonly crew: number
  /** May pause at closing and resume at the next opening. */
  readonly split: boolean
  /** Extension: more people of its skill, for a part of it; absent or null: none. */
  readonly help?: Help | null | undefined
  /** Extension: people taken first when they are free, the first named before the others. */
  readonly preferCrew?: readonly string[] | undefined
}

/** An unattended hold: runs its minutes through nights and closed days. */
export interface Hold extends StepBase {
  readonly kind: 'hold'
  /**
   * Extension: minutes into the hold after which the car may be moved (tack-free), at most once, before the hold
   * ends and while the shop is open; absent or null: never moved during it.
   */
  readonly moveAfter?: number | null | undefined
}

export type Step = Work | Hold

/** The job to be promised: its steps in order, no start before `release`, wished for at `asked`. */
export interface NewJob {
  readonly id: string
  readonly release: number
  readonly asked: number
  readonly steps: readonly Step[]
  /** Extension: bays taken when all objectives are equal, for steps that name none themselves. */
  readonly preferBays?: readonly string[] | undefined
}

export interface Problem {
  readonly id?: string | undefined
  /** Every start, move and handover is `gridFrom` plus a multiple of `grid` (1 to 60). */
  readonly grid: number
  /** Extension: where the grid is anchored, for zones whose offset is no multiple of it; 0 unless given. */
  readonly gridFrom?: number | undefined
  /** No time beyond it. */
  readonly horizon: number
  readonly open: readonly Span[]
  readonly bays: readonly Bay[]
  readonly crew: readonly Person[]
  readonly fixed: readonly Stay[]
  readonly newJob: NewJob
}

export interface PlannedStep {
  /** The bay in which the step starts. */
  readonly bay: string
  readonly start: number
  readonly end: number
  readonly crew: readonly string[]
  /** Extension: those who are there for its help alone; absent: nobody. */
  readonly help?: readonly string[] | undefined
  /** Extension: the one move inside a hold, at `at`, into `bay`. */
  readonly moved?: { readonly at: number; readonly bay: string } | undefined
}

export interface Plan {
  readonly steps: readonly PlannedStep[]
  readonly handover: number
}

export type OfferKind = 'soonest' | 'leastBlocked' | 'askedDay'

/** What a plan costs, in minutes and moves. */
export interface Objective {
  readonly dropOff: number
  readonly handover: number
  /** Opening minutes between drop-off and handover in which nobody works on the car. */
  readonly blockedOpen: number
  readonly moves: number
}

export interface Offer extends Objective {
  readonly kind: OfferKind
  readonly feasible: true
  readonly plan: Plan
  readonly stays: readonly Stay[]
  /** Minutes of the holds that fall outside opening hours: cure that costs no bay time. */
  readonly closedCure: number
}

/** Nothing fits the horizon; `explain` says what stands in the way. */
export interface NoOffer {
  readonly kind: OfferKind
  readonly feasible: false
}

export type Offers = Readonly<Record<OfferKind, Offer | NoOffer>>
