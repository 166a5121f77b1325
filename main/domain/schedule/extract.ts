import type { Finish } from './handovers.ts'
import { moveRange } from './holdMoves.ts'
import { type Gap, type Layer, waitRange } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { valueAt } from './pieces.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Reached } from './search.ts'
import type { Hold, Step } from './types.ts'

/** One step of a found way: its bay, its start and end, and the move inside it if there is one. */
export interface Placed {
  bay: number
  start: number
  end: number
  moved?: { at: number; bay: number }
}

/** A start in a layer, and the value of the best way to it. */
interface Place {
  readonly gap: Gap
  /** The start, a grid point. */
  readonly k: number
  readonly value: number
}

/**
 * Reads the way that a finish stands for back out of the layers: at each step, a start before it that has exactly
 * the value it was reached with. Values are integers, so equality is exact; where several starts have it, the
 * earliest is taken, which leaves the slack after the work rather than before it.
 */
export function extract(reached: Reached, finish: Finish): Placed[] {
  const { prepared, score, layers } = reached
  const { steps } = prepared.problem.newJob
  const placed: Placed[] = []
  let place: Place = finish
  let l = layers.length - 1
  while (l >= 0) {
    const layer = layers[l]!
    const step = steps[layer.step]!
    const start = minuteAt(prepared, place.k)
    const end = start + lengthAt(layer, place)
    if (layer.afterMove && step.kind === 'hold') {
      // Two layers tell of this step: by where the hold ends, and by where it began.
      const before = beforeMove(reached, layers[--l]!, place, step)
      const moved = before.movedAt === undefined ? undefined : { at: before.movedAt, bay: place.gap.bay }
      place = before.place
      placed.unshift({ bay: place.gap.bay, start, end, ...(moved && { moved }) })
    } else placed.unshift({ bay: place.gap.bay, start, end })
    if (--l < 0) break
    const value = place.value + score.unlikedBay(layer.step, place.gap.bay)
    place = beforeStep(reached, layers[l]!, { ...place, value }, step)
  }
  return placed
}

function pieceAt(layer: Layer, gap: Gap, k: number): number {
  for (let p = gap.first; p < gap.last; p++)
    if (layer.pieces.from[p]! <= k && k <= layer.pieces.to[p]!) return p
  return -1
}

function lengthAt(layer: Layer, place: Place): number {
  return layer.pieces.length[pieceAt(layer, place.gap, place.k)]!
}

/** The earliest start in the layer before that leads to `place` with its value, staying or moving over. */
function beforeStep(reached: Reached, before: Layer, place: Place, step: Step): Place {
  const { prepared, score } = reached
  const { bay, span } = place.gap
  let found: Place | undefined
  const moves = !step.sameBay && isDoor(prepared, place.k)
  for (const gap of before.gaps) {
    const stays = gap.bay === bay && gap.span === span
    if (!stays && !moves) continue
    if (gridFloor(prepared, prepared.bays[gap.bay]!.to[gap.span]!) < place.k) continue
    const value = stays ? place.value : place.value + score.move
    const k = earliestWith(prepared, before, { gap, k: place.k, value }, step)
    if (k !== undefined && (!found || k < found.k)) found = { gap, k, value }
  }
  if (!found) throw new Error(`No way back from grid point ${place.k} of step ${before.step + 1}`)
  return found
}

/** The earliest start of a layer's gap with the value of `ready`, from which the `next` step can begin at its point. */
function earliestWith(prepared: Prepared, layer: Layer, ready: Place, next: Step): number | undefined {
  const { pieces } = layer
  const { gap, k, value } = ready
  for (let p = gap.first; p < gap.last; p++) {
    const wait = waitRange(prepared, next, pieces.length[p]!)
    const from = Math.max(pieces.from[p]!, k - wait.to)
    const to = Math.min(pieces.to[p]!, k - wait.from)
    if (from > to) continue
    const gain = value - pieces.value[p]!
    const slope = pieces.slope[p]!
    if (slope === 0) {
      if (gain === 0) return from
      continue
    }
    const at = pieces.from[p]! + gain / slope
    if (Number.isInteger(at) && from <= at && at <= to) return at
  }
  return undefined
}

/** Where the car stood when the hold began that ends in `place`, and when it was moved, if it was. */
function beforeMove(
  reached: Reached,
  before: Layer,
  place: Place,
  hold: Hold,
): { place: Place; movedAt: number | undefined } {
  const { prepared, score } = reached
  const { bay, span } = place.gap
  const target = prepared.bays[bay]!
  for (const gap of before.gaps) {
    const p = pieceAt(before, gap, place.k)
    if (p < 0) continue
    const value = valueAt(before.pieces, p, place.k)
    const began = { gap, k: place.k, value }
    if (gap.bay === bay && gap.span === span) {
      const fits = minuteAt(prepared, place.k) + hold.minutes <= target.to[span]!
      if (fits && value === place.value) return { place: began, movedAt: undefined }
    } else if (gap.bay !== bay && value === place.value + score.move) {
      const movedAt = firstMove(prepared, hold, began, place.gap)
      if (movedAt !== undefined) return { place: began, movedAt }
    }
  }
  throw new Error(`No way back into the hold that starts at grid point ${place.k}`)
}

/** The first minute at which a car in a hold may go from where it stands into another gap, by an open door. */
function firstMove(prepared: Prepared, hold: Hold, { gap, k }: Place, into: Gap): number | undefined {
  const range = moveRange(prepared, hold)
  const from = Math.max(k + range.from, gridCeil(prepared, prepared.bays[into.bay]!.from[into.span]!))
  const to = Math.min(k + range.to, gridFloor(prepared, prepared.bays[gap.bay]!.to[gap.span]!))
  const door = firstAtLeast(prepared.doorTo, from)
  const at = Math.max(from, prepared.doorFrom[door] ?? Number.POSITIVE_INFINITY)
  return at <= to ? minuteAt(prepared, at) : undefined
}

function isDoor(prepared: Prepared, k: number): boolean {
  const door = firstAtLeast(prepared.doorTo, k)
  return door < prepared.doorTo.length && prepared.doorFrom[door]! <= k
}
