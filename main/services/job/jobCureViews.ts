/** What the screen of one job is told of its cure beyond the clock itself. */
import type { JobLayerView } from '../../domain/floor/index.ts'

export type { JobLayerView }

export interface HeatingView {
  id: string
  fromAt: number
  toAt: number
  panelC: number
  note: string
  who: string
}

/** A promise that no longer holds, or that somebody is missing for, and what may be done about it. */
export interface SlipView {
  lateMin: number
  /** The first handover possible as everything stands. */
  nextAt: number
  /** Another place, or other people, for the rest of the job: sooner than that, or with nobody missing. Null: none. */
  place: { position: number; bayId: string; bayName: string; startAt: number; handoverAt: number } | null
  /** Null where the promise still holds. */
  message: { to: string | null; subject: string; text: string } | null
}

export interface JobCureView {
  layers: JobLayerView[]
  /** Heated cures may be recorded: a coat is laid, and its profile has rows for it or not. */
  canHeat: boolean
  /** The rows of the profiles laid, in words; empty where no data sheet has one. */
  heatRows: string[]
  heatings: HeatingView[]
  slip: SlipView | null
  /** The rules behind the moments still to come, each with its source. */
  rules: string[]
}
