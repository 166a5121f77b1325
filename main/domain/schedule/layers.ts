import type { Span } from '../calendar/spans.ts'
import type { Piece } from './pieces.ts'
import type { FreeBay, Prepared } from './prepare.ts'
import type { Bay, Step } from './types.ts'

/** One bay's free span that a step may start in, and the starts there with the value of the best way to each. */
export interface Gap {
  readonly bay: FreeBay
  /** The span itself, one of the bay's own. */
  readonly span: Span
  readonly pieces: readonly Piece[]
}

/**
 * Everything known after some of the chain: for every gap, for every start of the step there, the value of the
 * best way to it. `afterMove` marks the layer that follows a hold in which the car may be moved: the same starts,
 * but told by the gap in which the hold ends.
 */
export interface Layer {
  readonly step: number
  readonly afterMove: boolean
  /** In the order of the bays, and in each of time. */
  readonly gaps: readonly Gap[]
}

/** The bays a step may stand in, by capability and its own allow-list. */
export function baysFor<B extends Bay>(
  { bays }: { readonly bays: readonly B[] },
  { needs, bays: only }: Step,
): B[] {
  return bays.filter(bay => (needs == null || bay.can.includes(needs)) && (!only || only.includes(bay.id)))
}

/** Grid steps from a start to the first and last start of the step after it. */
export function waitRange({ grid }: Prepared, next: Step, length: number): Span {
  return {
    from: Math.ceil((length + (next.waitMin ?? 0)) / grid),
    to: next.waitMax == null ? Number.POSITIVE_INFINITY : Math.floor((length + next.waitMax) / grid),
  }
}
