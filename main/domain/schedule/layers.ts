import type { Pieces } from './pieces.ts'
import type { Prepared } from './prepare.ts'
import type { Step } from './types.ts'

/** One bay's free span that a step may start in, and its part `[first, last)` of the layer's pieces. */
export interface Gap {
  readonly bay: number
  readonly span: number
  readonly first: number
  readonly last: number
}

/**
 * Everything known after some of the chain: for every gap, for every start of the step there, the value of the
 * best way to it. `afterMove` marks the layer that follows a hold in which the car may be moved: the same starts,
 * but told by the gap in which the hold ends.
 */
export interface Layer {
  readonly step: number
  readonly afterMove: boolean
  readonly pieces: Pieces
  readonly gaps: readonly Gap[]
}

/** The bays a step may stand in, by capability and its own allow-list, as indices. */
export function baysFor(prepared: Prepared, step: Step): number[] {
  const able: number[] = []
  prepared.problem.bays.forEach((bay, b) => {
    if (step.needs != null && !bay.can.includes(step.needs)) return
    if (step.bays && !step.bays.includes(bay.id)) return
    able.push(b)
  })
  return able
}

/** Grid steps from a start to the first and last start of the step after it. */
export function waitRange(prepared: Prepared, next: Step, length: number): { from: number; to: number } {
  return {
    from: Math.ceil((length + (next.waitMin ?? 0)) / prepared.grid),
    to: next.waitMax == null ? Number.POSITIVE_INFINITY : Math.floor((length + next.waitMax) / prepared.grid),
  }
}
