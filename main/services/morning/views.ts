/** What the morning sheet is given. */
import type { Span } from '../../domain/calendar/index.ts'
import type { Capability } from '../../domain/shop/words.ts'
import type { CureMarks } from '../floor/views.ts'

export interface MorningCarView {
  jobId: string
  jobNumber: number
  plate: string
  customerName: string
  vehicleWords: string
}

export interface MorningView {
  date: string
  nowAt: number
  zone: string
  shopName: string
  fromAt: number
  toAt: number
  open: Span[]
  arrivals: (MorningCarView & {
    dueAt: number
    arrivedAt: number | null
    phone: string | null
    bayName: string
    treatments: string[]
  })[]
  bays: {
    id: string
    name: string
    capabilities: Capability[]
    closures: { fromAt: number; toAt: number; reason: string }[]
    cars: (MorningCarView & { fromAt: number; toAt: number; lines: { at: number; words: string }[] })[]
  }[]
  crew: {
    id: string
    name: string
    present: Span[]
    steps: (MorningCarView & {
      position: number
      name: string
      bayName: string
      fromAt: number
      toAt: number
      state: 'planned' | 'running' | 'done'
      with: string[]
      productName: string | null
    })[]
  }[]
  moves: (MorningCarView & { at: number; fromBayName: string; toBayName: string })[]
  /** Cures with a moment that falls on this day: from when each car may be touched, topped and driven. */
  cures: (MorningCarView & {
    bayName: string
    productName: string
    marks: CureMarks
    touchAt: number
    topperAt: number | null
    driveAt: number
    advisedAt: number
    /** What comes over it; null: nothing, so its clock lets the car go. */
    next: 'layer' | 'topper' | null
    words: string
  })[]
  /** The moments of all these cures that fall on the day, in the order they come. */
  moments: (MorningCarView & {
    at: number
    bayName: string
    productName: string
    what: string
    /** By the running clock of a coat that is laid; else as planned. */
    measured: boolean
  })[]
  handovers: (MorningCarView & {
    phone: string | null
    handoverAt: number
    promisedAt: number
    safeAt: number
    advisedAt: number
    late: boolean
    /** Somebody a step of it needs is away. */
    uncovered: boolean
    leftAt: number | null
    words: string
  })[]
  /** One line a chemical in use today. */
  cautions: { productId: string; productName: string; words: string }[]
}
