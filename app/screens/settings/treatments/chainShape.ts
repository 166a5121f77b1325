import { type CureProfile, cureCurve } from '../../../../main/domain/cure/index.ts'
import type { Capability, TreatmentStep } from '../../../../main/domain/shop/index.ts'
import type { LaidStep } from '../../../../main/domain/treatment/index.ts'
import type { SizeClass } from '../../../../main/domain/vehicle/index.ts'

/** A piece of the drawing; `weight` is its share of the width. */
export type Piece =
  | { kind: 'work'; index: number; minutes: number; weight: number }
  | { kind: 'wait'; minutes: number; weight: number }
  | {
      kind: 'hold'
      name: string
      minutes: number
      /** How long it may last before the next step comes too late; null: no limit. */
      most: number | null
      weight: number
      /** Drawn shorter than its time. */
      folded: boolean
      productId: string | null
      /** Minutes since its coat at its beginning. */
      age: number
    }

/** What stands in bays of one kind, side by side. */
export interface Run {
  needs: Capability
  weight: number
  pieces: Piece[]
}

/** A cure of a night would leave no room for the work: drawn, it is at most this share of all hands-on time. */
const longestShare = 0.45

/**
 * The chain of a treatment as it is written, each step with what `laid` puts before it: the holds of its coats and its
 * waits. Without `laid` (the chain cannot be laid yet) the steps stand alone.
 */
export function chainShape(
  steps: readonly TreatmentStep[],
  size: SizeClass,
  laid: readonly LaidStep[] | null,
): Run[] {
  const at = laid ? placesIn(laid, steps, size) : steps.map(() => null)
  const minutes = steps.map((step, i) =>
    at[i] === null ? step.minutes[size] : ownMinutes(steps, i, laid, at, size),
  )
  const longest = longestShare * minutes.reduce((sum, each) => sum + each, 0)
  const pieces: Piece[] = []
  const runs: Run[] = []
  const drawn = new Set<number>()
  const holdAt = (place: number, next?: LaidStep) => {
    const hold = laid?.[place]
    if (hold?.kind !== 'hold' || drawn.has(place)) return
    drawn.add(place)
    pieces.push({
      kind: 'hold',
      name: hold.name,
      minutes: hold.minutes,
      most: next?.waitMax == null ? null : hold.minutes + next.waitMax,
      weight: Math.min(hold.minutes, longest),
      folded: hold.minutes > longest,
      productId: hold.productId,
      age: sinceCoat(laid!, place),
    })
  }
  const flush = (needs: Capability) => {
    const run = runs.at(-1)
    const weight = pieces.reduce((sum, piece) => sum + piece.weight, 0)
    if (run?.needs === needs) {
      run.pieces.push(...pieces)
      run.weight += weight
    } else runs.push({ needs, weight, pieces: [...pieces] })
    pieces.length = 0
  }
  steps.forEach((step, index) => {
    const place = at[index] ?? null
    if (place !== null && place > 0) {
      holdAt(place - 1, laid![place])
      // The car stands where it was coated until its hold is over.
      if (pieces.length > 0) flush(runs.at(-1)?.needs ?? step.needs)
    }
    const wait = (place === null ? step.waitMin : laid![place]!.waitMin) ?? 0
    if (wait > 0) pieces.push({ kind: 'wait', minutes: wait, weight: Math.min(wait, longest) })
    pieces.push({ kind: 'work', index, minutes: minutes[index]!, weight: minutes[index]! })
    flush(step.needs)
  })
  if (laid) holdAt(laid.length - 1)
  if (pieces.length > 0) flush(runs.at(-1)?.needs ?? 'cure')
  return runs
}

/** Where each step stands in the laid chain; null for what the size leaves out and what is part of another step. */
function placesIn(laid: readonly LaidStep[], steps: readonly TreatmentStep[], size: SizeClass) {
  const places: (number | null)[] = steps.map(() => null)
  laid.forEach((link, place) => {
    if (link.kind !== 'work') return
    const index = steps.findIndex(
      (step, i) =>
        places[i] === null &&
        step.minutes[size] > 0 &&
        step.name.trim() === link.name &&
        step.stage === link.stage &&
        step.productId === link.productId,
    )
    if (index >= 0) places[index] = place
  })
  return places
}

/** A layer is laid with its levelling in it, which is drawn as the step it is written as. */
function ownMinutes(
  steps: readonly TreatmentStep[],
  index: number,
  laid: readonly LaidStep[] | null,
  at: readonly (number | null)[],
  size: SizeClass,
): number {
  let minutes = laid![at[index]!]!.minutes
  for (let i = index + 1; steps[i]?.stage === 'level' && at[i] === null; i++)
    minutes -= steps[i]!.minutes[size]
  return Math.max(0, minutes)
}

/** Minutes from the end of the coat that cures in this hold to its beginning. */
function sinceCoat(laid: readonly LaidStep[], place: number): number {
  let minutes = 0
  for (let i = place - 1; i >= 0; i--) {
    const step = laid[i]!
    if (step.kind === 'work' && step.productId === laid[place]!.productId) return minutes
    minutes += step.minutes + (step.waitMin ?? 0)
  }
  return minutes
}

/** How a coat hardens over one hold, as the outline of a path in a box of 100 by 100. */
export function holdPath(profile: CureProfile, age: number, minutes: number): string {
  const { degreeAt } = cureCurve(profile)
  const points = Array.from({ length: 25 }, (_, i) => {
    const { likely } = degreeAt(age + (minutes * i) / 24)
    return `${((i * 100) / 24).toFixed(1)} ${(100 - 92 * likely).toFixed(1)}`
  })
  return `M0 100L${points.join('L')}L100 100Z`
}
