/** The shop's floor over a stretch of time: its hours, bays, crew and everything booked. */
import type { Grid, Span } from '../calendar/index.ts'
import type { Capability, Skill } from '../shop/index.ts'
import type { FloorJob } from './floorJobs.ts'

export interface FloorBay {
  readonly id: string
  readonly name: string
  readonly capabilities: readonly Capability[]
  /** What it offers besides. */
  readonly offers: readonly string[]
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
  /** From outside: asked so many days before. Left out or 0: one of the shop's own. */
  readonly noticeDays?: number
}

/** Points in time are epoch minutes; the grid is anchored at a local midnight, so that starts fall on wall times. */
export interface Booked extends Grid {
  readonly nowAt: number
  /** The horizon: nothing is looked for after it. */
  readonly toAt: number
  readonly open: readonly Span[]
  readonly bays: readonly FloorBay[]
  readonly crew: readonly FloorPerson[]
  /** Everything that holds a bay from now on, as now projected. */
  readonly jobs: readonly FloorJob[]
  /** What is lent with each of them, by the job's id; left out: nothing. */
  readonly lent?: ReadonlyMap<string, readonly { readonly id: string; readonly name: string }[]>
}
