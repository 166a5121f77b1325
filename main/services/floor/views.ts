/** What is drawn of the floor wherever it shows: stays, their blocks and cures. Points in time are epoch minutes (`...At`). */
import type { BlockView, NextThingView } from '../../domain/floor/index.ts'
import type { JobStatus } from '../../domain/job/index.ts'

export type { CureMarks } from '../../domain/floor/index.ts'
export type { BlockView, JobStatus, NextThingView }

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
