import { type Ground, gridCeil, gridFloor, minuteAt } from './ground.ts'
import type { Finish } from './handovers.ts'
import { moveRange } from './holdMoves.ts'
import { type Layer, type Spot, waitRange } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { valueAt } from './pieces.ts'
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
  readonly spot: Spot
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
  const { ground, score, layers } = reached
  const { steps } = ground.kase.newJob
  const placed: Placed[] = []
  let place: Place = finish
  let l = layers.length - 1
  while (l >= 0) {
    const layer = layers[l]!
    const step = steps[layer.step]!
    const start = minuteAt(ground, place.k)
    const end = start + lengthAt(layer, place)
    if (layer.afterMove && step.kind === 'hold') {
      // Two layers tell of this step: by where the hold ends, and by where it began.
      const before = beforeMove(reached, layers[--l]!, place, step)
      const moved = before.movedAt === undefined ? undefined : { at: before.movedAt, bay: place.spot.bay }
      place = before.place
      placed.unshift({ bay: place.spot.bay, start, end, ...(moved && { moved }) })
    } else placed.unshift({ bay: place.spot.bay, start, end })
    if (--l < 0) break
    const value = place.value + score.unlikedBay(layer.step, place.spot.bay)
    place = beforeStep(reached, layers[l]!, { ...place, value }, step)
  }
  return placed
}

function pieceAt(layer: Layer, spot: Spot, k: number): number {
  for (let p = spot.first; p < spot.last; p++)
    if (layer.pieces.from[p]! <= k && k <= layer.pieces.to[p]!) return p
  return -1
}

function lengthAt(layer: Layer, place: Place): number {
  return layer.pieces.length[pieceAt(layer, place.spot, place.k)]!
}

/** The earliest start in the layer before that leads to `place` with its value, staying or moving over. */
function beforeStep(reached: Reached, before: Layer, place: Place, step: Step): Place {
  const { ground, score } = reached
  const { bay, span } = place.spot
  let found: Place | undefined
  const moves = !step.sameBay && isDoor(ground, place.k)
  for (const spot of before.spots) {
    const stays = spot.bay === bay && spot.span === span
    if (!stays && !moves) continue
    if (gridFloor(ground, ground.bays[spot.bay]!.to[spot.span]!) < place.k) continue
    const value = stays ? place.value : place.value + score.move
    const k = earliestWith(ground, before, { spot, k: place.k, value }, step)
    if (k !== undefined && (!found || k < found.k)) found = { spot, k, value }
  }
  if (!found) throw new Error(`No way back from grid point ${place.k} of step ${before.step + 1}`)
  return found
}

/** The earliest start of a layer's spot with the value of `ready`, from which the `next` step can begin at its point. */
function earliestWith(ground: Ground, layer: Layer, ready: Place, next: Step): number | undefined {
  const { pieces } = layer
  const { spot, k, value } = ready
  for (let p = spot.first; p < spot.last; p++) {
    const wait = waitRange(ground, next, pieces.length[p]!)
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
  const { ground, score } = reached
  const { bay, span } = place.spot
  const target = ground.bays[bay]!
  for (const spot of before.spots) {
    const p = pieceAt(before, spot, place.k)
    if (p < 0) continue
    const value = valueAt(before.pieces, p, place.k)
    const began = { spot, k: place.k, value }
    if (spot.bay === bay && spot.span === span) {
      const fits = minuteAt(ground, place.k) + hold.minutes <= target.to[span]!
      if (fits && value === place.value) return { place: began, movedAt: undefined }
    } else if (spot.bay !== bay && value === place.value + score.move) {
      const movedAt = firstMove(ground, hold, began, place.spot)
      if (movedAt !== undefined) return { place: began, movedAt }
    }
  }
  throw new Error(`No way back into the hold that starts at grid point ${place.k}`)
}

/** The first minute at which a car in a hold may go from where it stands into another spot, by an open door. */
function firstMove(ground: Ground, hold: Hold, { spot, k }: Place, into: Spot): number | undefined {
  const range = moveRange(ground, hold)
  const from = Math.max(k + range.from, gridCeil(ground, ground.bays[into.bay]!.from[into.span]!))
  const to = Math.min(k + range.to, gridFloor(ground, ground.bays[spot.bay]!.to[spot.span]!))
  const door = firstAtLeast(ground.doorTo, from)
  const at = Math.max(from, ground.doorFrom[door] ?? Number.POSITIVE_INFINITY)
  return at <= to ? minuteAt(ground, at) : undefined
}

function isDoor(ground: Ground, k: number): boolean {
  const door = firstAtLeast(ground.doorTo, k)
  return door < ground.doorTo.length && ground.doorFrom[door]! <= k
}
