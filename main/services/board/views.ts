/** What the board is given. */
import type { Span } from '../../domain/calendar/index.ts'
import type { CureProfile } from '../../domain/cure/index.ts'
import type { Capability } from '../../domain/shop/words.ts'
import type { StayView } from '../floor/views.ts'

/** A car whose promise no longer holds, or is not known to: somebody one of its steps needs is away. */
export interface PromiseAtRisk {
  jobId: string
  plate: string
  customerName: string
  promisedAt: number
  handoverAt: number
  late: boolean
  /** Who is missing, in words; null: nobody. */
  uncovered: string | null
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
  /** Promises that slip or that somebody is missing for, on whatever day, soonest first. */
  slips: PromiseAtRisk[]
  /** The cure profiles of the products in `stays`, by product id. */
  profiles: Record<string, CureProfile>
}

export type TriedMoveView =
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
