/**
 * What the upkeep screens are given: plain JSON. Points in time are epoch minutes (`...At`), days `YYYY-MM-DD` of the
 * shop's zone (`...On`). A visit is named by its plan and the day the plan's rule gave it (`planId`, `ruleOn`).
 */
import type {
  Channel,
  CurvePoint,
  DueState,
  ExposureClass,
  FactorMark,
  IntervalStep,
  LifeReading,
  PlanKind,
} from '../../domain/upkeep/index.ts'
import type { JobStatus } from '../floor/views.ts'
import type { UpkeepSettings } from './inputs.ts'

export type { Channel, CurvePoint, DueState, ExposureClass, FactorMark, IntervalStep, PlanKind }

/** A visit's booking, where it has one. */
export interface VisitBooking {
  jobId: string
  jobNumber: number
  status: JobStatus
  dropOffAt: number
}

/** The last reminder of a visit. */
export interface VisitReminder {
  messageId: string
  channel: Channel
  state: 'draft' | 'approved' | 'sending' | 'sent' | 'failed' | 'withdrawn'
  tryNo: number
  sentAt: number | null
  outcome: 'booked' | 'later' | 'no' | 'unreachable' | 'sold' | null
  /** When it is tried again, where that was agreed. */
  nextTryOn: string | null
}

export interface VisitView {
  /** `planId ruleOn` */
  key: string
  planId: string
  ruleOn: string
  kind: PlanKind
  title: string
  dueOn: string
  firstOn: string
  lastOn: string
  /** The day the spread aims it at; null: its due day. */
  targetOn: string | null
  state: DueState
  /** Not the next visit of its plan but a later one, if all before are done when due. */
  projected: boolean
  daysLate: number
  /** Why it is due then; null for a projected one. */
  sentence: string | null
  vehicleId: string
  plate: string
  vehicleWords: string
  customerId: string
  customerName: string
  productName: string | null
  /** The channels the owner agrees to now and has an address for. */
  channels: Channel[]
  booking: VisitBooking | null
  reminder: VisitReminder | null
  /** Why nothing more is written about it, in words: they said no, all tries are used. Null: it may be. */
  closedBecause: string | null
}

/** A plan as the screens name it where its visits cannot be worked out. */
export interface FailedPlanView {
  planId: string
  vehicleId: string
  title: string
  plate: string
  customerName: string
  why: string
}

export interface DueView {
  today: string
  zone: string
  /** Of what the filter lets through, projected visits left out. */
  counts: Record<DueState, number>
  visits: VisitView[]
  /** Plans whose visits cannot be worked out, whatever the filter. */
  failed: FailedPlanView[]
}

export interface WeekView {
  mondayOn: string
  /** ISO week number. */
  week: number
  /** Visits if each came when due (in the first week: and all that is overdue). */
  asDue: number
  /** Visits as aimed at. */
  planned: number
  /** How many visits there is room for beside what is booked. */
  room: number
}

export interface YearView {
  today: string
  weeks: WeekView[]
  /** How the room was counted, in words. */
  roomWords: string
  /** Plans left out because their visits cannot be worked out. */
  failed: FailedPlanView[]
}

export interface SpreadView extends Omit<YearView, 'weeks'> {
  /** `planned` as it would be. */
  weeks: WeekView[]
  moves: {
    planId: string
    ruleOn: string
    title: string
    plate: string
    customerName: string
    dueOn: string
    /** Aimed at now, and as proposed. */
    fromOn: string
    toOn: string
    /** Weeks after (over 0) or before (under 0) the week it is due. */
    off: number
  }[]
  left: { planId: string; ruleOn: string; title: string; plate: string; because: 'no-week' | 'full' }[]
  lateWeeks: number
  earlyWeeks: number
  /** What stands in the way, in words. */
  words: string[]
}

/** What an act answers with; `upkeep.undo({ actId })` takes all of it back. */
export interface ActView {
  actId: string
  /** What was done, in words. */
  words: string
}

export interface TimelineEntry {
  on: string
  kind:
    | 'coat'
    | 'topper'
    | 'job'
    | 'visit'
    | 'skipped'
    | 'moved'
    | 'inspection'
    | 'away'
    | 'sold'
    | 'reminder'
  words: string
  /** Takes this entry back, where that can be done. */
  actId: string | null
  jobId: string | null
  /** The look this tells of, which `upkeep.voidInspection` takes back. */
  inspectionId: string | null
}

export interface PlanView {
  id: string
  version: number
  kind: PlanKind
  title: string
  rule: string
  ruleWords: string
  earlyDays: number
  lateDays: number
  productName: string | null
  /** Its next visit; null: none follows, and `sentence` says why. */
  next: VisitView | null
  sentence: string
}

export interface ProposalView {
  /** As `upkeep.acceptProposal` takes it back. */
  planId: string
  what: 'interval' | 'next-visit'
  fromOn: string
  toOn: string
  sentence: string
}

export interface FactorView {
  id: string
  label: string
  mark: FactorMark
  choices: { id: string; label: string; multiplier: number }[]
  chosen: string | null
}

/** What is known of how long the topper that is on the car lasts. Ages in this car's own days since it was laid. */
export interface LifeView {
  productName: string
  layerId: string
  laidOn: string
  ageDays: number
  exposureClass: ExposureClass
  /** The share of such toppers that should still work when renewed, as the shop chose. */
  level: number
  renewDays: number
  /** At `confidence`; `highDays` null: no upper end known. */
  lowDays: number
  highDays: number | null
  confidence: number
  curve: CurvePoint[]
  /** Inspections of all cars of this exposure class, in this car's days. */
  readings: LifeReading[]
  lives: number
  ended: number
  /** 1: all of it is the data sheet's or the rule of thumb's; towards 0 with many inspections. */
  priorWeight: number
  sentence: string
}

export interface IntervalView {
  productDays: number
  /** Where the product's interval comes from. */
  productMark: 'data sheet' | 'common practice' | 'set by the shop'
  days: number
  multiplier: number
  steps: IntervalStep[]
  held: boolean
  sentence: string
}

export interface LayerView {
  id: string
  stage: 'coat' | 'topper'
  productId: string
  productName: string
  laidOn: string
  ageDays: number
}

export interface CarView {
  vehicleId: string
  plate: string
  vehicleWords: string
  customerId: string
  customerName: string
  today: string
  soldOn: string | null
  away: { actId: string; from: string; to: string; why: string }[]
  /** Newest first. */
  timeline: TimelineEntry[]
  /** Newest first. */
  layers: LayerView[]
  plans: PlanView[]
  exposure: { factors: FactorView[]; version: number }
  interval: IntervalView | null
  life: LifeView | null
  proposals: ProposalView[]
  /** What keeps the life from being read (inspections that contradict each other), in words. */
  trouble: string | null
}

export type ReminderSettingsView = UpkeepSettings

/** A proposed time, held as a job until `heldUntilAt`. */
export interface MessageSlot {
  jobId: string
  dropOffAt: number
  handoverAt: number
  heldUntilAt: number
}
