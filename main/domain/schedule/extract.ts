import { type Ground, gridCeil, gridFloor, minuteAt } from './ground.ts'
import type { Finish } from './handovers.ts'
import { moveRange } from './holdMoves.ts'
import { type Layer, type Spot, waitRange } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import type { Reached } from './search.ts'
import type { Hold, Step } from './types.ts'

/** One step of a found way: its bay, its start and end, and the move inside it if there is one. */
export interface Placed {
  bay: number
  start: number
  end: number
  moved?: { at: number; bay: number }
}

interface Place {
  readonly spot: Spot
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
  const steps = ground.kase.newJob.steps
  const placed: Placed[] = []
  let place: Place = finish
  for (let l = layers.length - 1; l >= 0; l--) {
    const layer = layers[l]!
    const length = lengthAt(layer, place)
    const start = minuteAt(ground, place.k)
    const step = steps[layer.step]!
    if (layer.afterMove) {
      const before = beforeMove(reached, layers[l - 1]!, place, step as Hold)
      const moved = before.at === undefined ? undefined : { at: before.at, bay: place.spot.bay }
      placed.unshift({ bay: before.place.spot.bay, start, end: start + length, ...(moved && { moved }) })
      place = before.place
      l--
    } else placed.unshift({ bay: place.spot.bay, start, end: start + length })
    if (l > 0) {
      const toll = score.bayToll(layer.step, place.spot.bay)
      place = beforeStep(reached, layers[l - 1]!, { ...place, value: place.value + toll }, step)
    }
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
    const k = earliestWith(ground, before, spot, place.k, value, step)
    if (k !== undefined && (!found || k < found.k)) found = { spot, k, value }
  }
  if (!found) throw new Error(`No way back from grid point ${place.k} of step ${before.step + 1}`)
  return found
}

function earliestWith(
  ground: Ground,
  layer: Layer,
  spot: Spot,
  k: number,
  value: number,
  next: Step,
): number | undefined {
  const { pieces } = layer
  for (let p = spot.first; p < spot.last; p++) {
    const range = waitRange(ground, next, pieces.length[p]!)
    const from = Math.max(pieces.from[p]!, k - range.to)
    const to = Math.min(pieces.to[p]!, k - range.from)
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
): { place: Place; at: number | undefined } {
  const { ground, score } = reached
  const target = ground.bays[place.spot.bay]!
  const range = moveRange(ground, hold)
  for (const spot of before.spots) {
    const p = pieceAt(before, spot, place.k)
    if (p < 0) continue
    const value = before.pieces.value[p]! + before.pieces.slope[p]! * (place.k - before.pieces.from[p]!)
    if (spot.bay === place.spot.bay && spot.span === place.spot.span) {
      const fits = minuteAt(ground, place.k) + hold.minutes <= target.to[place.spot.span]!
      if (fits && value === place.value) return { place: { spot, k: place.k, value }, at: undefined }
      continue
    }
    if (spot.bay === place.spot.bay || value !== place.value + score.move) continue
    const from = Math.max(place.k + range.from, gridCeil(ground, target.from[place.spot.span]!))
    const to = Math.min(place.k + range.to, gridFloor(ground, ground.bays[spot.bay]!.to[spot.span]!))
    const d = firstAtLeast(ground.doorTo, from)
    const at = Math.max(from, ground.doorFrom[d] ?? Number.POSITIVE_INFINITY)
    if (at <= to) return { place: { spot, k: place.k, value }, at: minuteAt(ground, at) }
  }
  throw new Error(`No way back into the hold that starts at grid point ${place.k}`)
}

function isDoor(ground: Ground, k: number): boolean {
  const d = firstAtLeast(ground.doorTo, k)
  return d < ground.doorTo.length && ground.doorFrom[d]! <= k
}
