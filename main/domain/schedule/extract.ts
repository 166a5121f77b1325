import type { Finish } from './handovers.ts'
import { moveRange } from './holdMoves.ts'
import { type Gap, type Layer, waitRange } from './layers.ts'
import { touching } from './openTime.ts'
import { type Piece, valueAt } from './pieces.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Reached } from './search.ts'
import { stepAt } from './steps.ts'
import type { Hold, PlannedStep, Step } from './types.ts'

/** One step of a found way: its bay, its start and end, and the move inside it if there is one; nobody named yet. */
export type Placed = Omit<PlannedStep, 'crew'>

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
  const { prepared, score } = reached
  const layers = [...reached.layers]
  const placed: Placed[] = []
  let place: Place = finish
  for (let layer = layers.pop(); layer; layer = layers.pop()) {
    const step = stepAt(prepared.problem, layer.step)
    const start = minuteAt(prepared, place.k)
    const end = start + (pieceAt(place)?.length ?? step.minutes)
    const { bay } = place.gap
    // Two layers tell of a step in which the car may be moved: by where the hold ends, and by where it began.
    const stood = layer.afterMove ? layers.pop() : undefined
    let moved: Placed['moved']
    if (stood && step.kind === 'hold') {
      const before = beforeMove(reached, stood, place, step)
      if (before.movedAt !== undefined) moved = { at: before.movedAt, bay: bay.id }
      place = before.place
    }
    placed.unshift({ bay: place.gap.bay.id, start, end, ...(moved && { moved }) })
    const before = layers.at(-1)
    if (!before) break
    const value = place.value + score.unlikedBay(layer.step, place.gap.bay.id)
    place = beforeStep(reached, before, { ...place, value }, step)
  }
  return placed
}

/** The piece of its gap that holds the start of a place. */
function pieceAt({ gap, k }: Pick<Place, 'gap' | 'k'>): Piece | undefined {
  return gap.pieces.find(({ from, to }) => from <= k && k <= to)
}

/** The earliest start in the layer before that leads to `place` with its value, staying or moving over. */
function beforeStep(reached: Reached, before: Layer, place: Place, step: Step): Place {
  const { prepared, score } = reached
  let found: Place | undefined
  const moves = !step.sameBay && touching(prepared.doors, place.k, place.k).length > 0
  for (const gap of before.gaps) {
    const stays = gap.span === place.gap.span
    if (!stays && !moves) continue
    if (gridFloor(prepared, gap.span.to) < place.k) continue
    const value = stays ? place.value : place.value + score.move
    const k = earliestWith(prepared, { gap, k: place.k, value }, step)
    if (k !== undefined && (!found || k < found.k)) found = { gap, k, value }
  }
  if (!found) throw new Error(`No way back from grid point ${place.k} of step ${before.step + 1}`)
  return found
}

/** The earliest start of a gap with the value of `ready`, from which the `next` step can begin at its point. */
function earliestWith(prepared: Prepared, { gap, k, value }: Place, next: Step): number | undefined {
  for (const piece of gap.pieces) {
    const wait = waitRange(prepared, next, piece.length)
    const from = Math.max(piece.from, k - wait.to)
    const to = Math.min(piece.to, k - wait.from)
    if (from > to) continue
    const gain = value - piece.value
    if (piece.slope === 0) {
      if (gain === 0) return from
      continue
    }
    const at = piece.from + gain / piece.slope
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
  for (const gap of before.gaps) {
    const piece = pieceAt({ gap, k: place.k })
    if (!piece) continue
    const value = valueAt(piece, place.k)
    const began = { gap, k: place.k, value }
    if (gap.span === span) {
      const fits = minuteAt(prepared, place.k) + hold.minutes <= span.to
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
  const from = Math.max(k + range.from, gridCeil(prepared, into.span.from))
  const to = Math.min(k + range.to, gridFloor(prepared, gap.span.to))
  const [door] = touching(prepared.doors, from, to)
  return from <= to && door ? minuteAt(prepared, Math.max(from, door.from)) : undefined
}
