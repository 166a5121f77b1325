import { type Laying, layFloor } from '../../../main/domain/schedule/plan/layFloor.ts'
import type { LayParts } from '../../../main/domain/schedule/plan/parts.ts'
import type { FloorPlan, FloorProblem } from '../../../main/domain/schedule/plan/types.ts'
import { verifyFloor } from '../../domain/schedule/plan/verifyFloor.ts'
import type { Figure } from '../run.ts'

export function figure(
  name: string,
  value: number,
  unit: string,
  goal: string | null = null,
  met: boolean | null = null,
): Figure {
  return { bench: 'plan', case: name, value: Math.round(value * 1000) / 1000, unit, goal, met }
}

/** Runs a search for so many seconds at the most; the last it came to and the time it took. */
export function timed<T>(search: Iterator<T, T>, limitS: number) {
  const start = performance.now()
  for (;;) {
    const { value, done } = search.next()
    const seconds = (performance.now() - start) / 1000
    if (done || seconds >= limitS) return { last: value, seconds }
  }
}

/** A floor laid for so many seconds at the most; whatever it comes to is judged. */
export function layTimed(
  floor: FloorProblem,
  limitS: number,
  { parts = {}, present }: { readonly parts?: Partial<LayParts>; readonly present?: FloorPlan } = {},
): { last: Laying; seconds: number } {
  const { last, seconds } = timed(layFloor(floor, { parts, present }), limitS)
  const objections = last.plan ? verifyFloor(floor, last.plan) : []
  if (objections.length > 0) throw new Error(`${floor.id}: ${objections.join('; ')}`)
  return { last, seconds }
}
