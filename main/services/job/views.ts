/** What the screen of one job is given. */
import type { CureProfile } from '../../domain/cure/index.ts'
import type { Condition, Finish, Stage } from '../../domain/shop/words.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import type { CureMarks, JobStatus, StayView } from '../floor/views.ts'

export interface JobStepView {
  position: number
  kind: 'work' | 'hold'
  name: string
  stage: Stage
  minutes: number
  bayId: string
  bayName: string
  /** As now projected. */
  startAt: number
  endAt: number
  actualStartAt: number | null
  actualEndAt: number | null
  state: 'planned' | 'running' | 'done'
  crew: { id: string; name: string }[]
  productId: string | null
  productName: string | null
  moved: { bayId: string; bayName: string; at: number } | null
  /** On a hold: the clock of the coat it follows. */
  cure: CureMarks | null
  /** May be started, finished or reopened now (holds start and finish by themselves). */
  can: { start: boolean; finish: boolean; reopen: boolean }
}

export interface JobView {
  id: string
  number: number
  version: number
  status: JobStatus
  nowAt: number
  zone: string
  customer: { id: string; name: string; phone: string | null; email: string | null }
  vehicle: {
    id: string
    plate: string
    words: string
    sizeClass: SizeClass
    finish: Finish
    note: string
  }
  condition: Condition
  treatments: { name: string; priceMinor: number }[]
  priceMinor: number
  currency: string
  note: string
  heldUntilAt: number | null
  createdAt: number
  dropOffAt: number
  arrivedAt: number | null
  promisedAt: number
  /** The handover as now projected. */
  handoverAt: number
  leftAt: number | null
  /** Something that cures is laid, or is to be: `safeAt` is then its profile's figure, else when the work is done. */
  coated: boolean
  /** Which rule each comes from is said in `cureWords`. */
  safeAt: number
  advisedAt: number
  /** The projected handover is after the promised one, by so many minutes; 0 when kept. */
  lateMin: number
  /** The slip, the conflicts and the cautions, in words. */
  lateWords: string | null
  /** Somebody a step of it needs is away; `conflicts` say who. */
  uncovered: boolean
  conflicts: string[]
  cureWords: string[]
  cautions: string[]
  steps: JobStepView[]
  stays: StayView[]
  profiles: Record<string, CureProfile>
  can: {
    confirm: boolean
    arrive: boolean
    handOver: boolean
    promise: boolean
    cancel: boolean
    move: boolean
  }
  /** Newest first. */
  history: { at: number; who: string; words: string }[]
}

/** A job as a search lists it. */
export interface FoundJobView {
  id: string
  number: number
  status: JobStatus
  dropOffAt: number
  handoverAt: number
  customerName: string
  plate: string
  vehicleWords: string
}
