/** What is drawn of the floor wherever it shows: stays, their blocks and cures. Points in time are epoch minutes (`...At`). */
import type { JobStatus } from '../../domain/job/index.ts'
import type { CureClockView } from '../cure/clockView.ts'

export type { JobStatus }

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

export interface NextThingView {
  what: 'touch' | 'layer' | 'topper' | 'leave'
  fromAt: number
  untilAt: number | null
}

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
