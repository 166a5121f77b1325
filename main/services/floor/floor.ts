/** The shop's floor over a stretch of time, as everything that plans reads it. */
import type { Span } from '../../domain/calendar/index.ts'
import type { Capability, Skill } from '../../domain/shop/index.ts'
import type { ShopView } from '../desk/shopView.ts'
import type { Named } from '../desk/shopWords.ts'
import type { FloorJob } from './floorJobs.ts'

export interface FloorBay {
  readonly id: string
  readonly name: string
  readonly capabilities: readonly Capability[]
  readonly closures: readonly { readonly fromAt: number; readonly toAt: number; readonly reason: string }[]
  readonly archived: boolean
}

export interface FloorPerson {
  readonly id: string
  readonly name: string
  readonly skills: readonly Skill[]
  /** Opening minutes in which this person is there, booked or not. */
  readonly present: readonly Span[]
  readonly archived: boolean
}

export interface Floor extends Named {
  readonly shop: ShopView
  readonly gridMin: number
  /** Local midnight, where the grid is anchored, so that starts fall on wall times. */
  readonly gridFrom: number
  readonly fromAt: number
  readonly toAt: number
  readonly open: readonly Span[]
  readonly bays: readonly FloorBay[]
  readonly crew: readonly FloorPerson[]
  /** Everything that holds a bay from now on, as now projected. */
  readonly jobs: readonly FloorJob[]
}
