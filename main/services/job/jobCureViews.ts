/** What the screen of one job is told of its cure beyond the clock itself. */
import type { WindowVerdict } from '../../domain/cure/index.ts'

export type { WindowVerdict }

export interface JobLayerView {
  position: number
  name: string
  productName: string
  /** As it was, or as it is planned. */
  startAt: number
  endAt: number
  laid: boolean
  /** The window the coat beneath leaves for this one; null where it is the first, or the profile names none. */
  window: { opensAt: number; closesAt: number | null } | null
  /** Null: nothing lies beneath it. */
  verdict: WindowVerdict | null
  /** What the profile of the coat beneath asks now that its window was missed. */
  asks: string | null
  /** The kept check of the conditions it was begun in, in words. */
  conditions: string | null
}

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
