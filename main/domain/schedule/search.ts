import { type Ground, gridFloor } from './ground.ts'
import { holdMoves } from './holdMoves.ts'
import { type Layer, type Spot, waitRange } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { addPiece, clearPieces, envelope, noPieces, type Pieces } from './pieces.ts'
import { dropOffPieces, type Score, scoreOf } from './score.ts'
import { restrict, settle } from './settle.ts'
import { type Starts, startsOf } from './starts.ts'
import type { Step } from './types.ts'

/** What a search looks for: everything between two minutes, with the latest or the earliest drop-off. */
export interface Query {
  readonly lo: number
  readonly hi: number
  readonly dropOff: 'latest' | 'earliest'
  /** No drop-off after this minute. */
  readonly dropTo?: number
}

export interface Reached {
  readonly ground: Ground
  readonly query: Query
  readonly score: Score
  /** One layer a step (two where a hold may be moved in); shorter than the chain where nothing is reached. */
  readonly layers: readonly Layer[]
  readonly complete: boolean
}

/**
 * Carries the sets of feasible starts through the chain. For each step, each bay and each free span of it the label
 * holds all starts there are and, as a function of the start, the best drop-off (then moves, then preferences), so
 * nothing is cut that any offer could need: the answer is exact on the grid.
 */
export function search(ground: Ground, query: Query): Reached {
  const steps = ground.kase.newJob.steps
  const score = scoreOf(ground, query.dropOff === 'latest')
  const layers: Layer[] = []
  let previous: Layer | undefined
  for (let i = 0; i < steps.length; i++) {
    const step = steps[i]!
    const starts = startsOf(ground, step, query.lo, query.hi)
    const next: Layer = previous
      ? advance(ground, score, previous, step, i, starts)
      : settle(
          ground,
          score,
          step,
          i,
          starts,
          arrivals(ground, score, step, starts, query),
          undefined,
          undefined,
        )
    if (next.spots.length === 0) return { ground, query, score, layers, complete: false }
    layers.push(next)
    previous = next
    if (step.kind === 'hold' && step.moveAfter != null) {
      previous = holdMoves(ground, score, next, step)
      if (previous.spots.length === 0) return { ground, query, score, layers, complete: false }
      layers.push(previous)
    }
  }
  return { ground, query, score, layers, complete: true }
}

/** The first step's starts, valued by their own minute: the drop-off. */
function arrivals(ground: Ground, score: Score, step: Step, starts: Starts, query: Query): Pieces {
  const open = step.kind === 'hold' ? atDoors(ground, starts) : starts
  const last = gridFloor(ground, query.dropTo ?? query.hi)
  return dropOffPieces(ground, score, open, last)
}

/** The starts at which the shop's doors are open. */
function atDoors(ground: Ground, starts: Starts): Starts {
  const open: Starts = { from: [], to: [], length: [] }
  const { doorFrom, doorTo } = ground
  for (let i = 0; i < starts.from.length; i++)
    for (let d = firstAtLeast(doorTo, starts.from[i]!); d < doorTo.length; d++) {
      if (doorFrom[d]! > starts.to[i]!) break
      open.from.push(Math.max(starts.from[i]!, doorFrom[d]!))
      open.to.push(Math.min(starts.to[i]!, doorTo[d]!))
      open.length.push(starts.length[i]!)
    }
  return open
}

function advance(
  ground: Ground,
  score: Score,
  previous: Layer,
  step: Step,
  index: number,
  starts: Starts,
): Layer {
  const after = noPieces()
  const spots: Spot[] = []
  const raw = noPieces()
  for (const spot of previous.spots) {
    clearPieces(raw)
    const bayEnd = gridFloor(ground, ground.bays[spot.bay]!.to[spot.span]!)
    for (let p = spot.first; p < spot.last; p++) addWindow(ground, previous.pieces, p, step, bayEnd, raw)
    const first = after.from.length
    if (raw.from.length > 0) envelope(raw, after)
    if (after.from.length > first) spots.push({ ...spot, first, last: after.from.length })
  }
  let moved: Pieces | undefined
  if (!step.sameBay && spots.length > 0) {
    clearPieces(raw)
    for (let p = 0; p < after.from.length; p++)
      addPiece(raw, after.from[p]!, after.to[p]!, after.value[p]! - score.move, after.slope[p]!, 0)
    const best = noPieces()
    envelope(raw, best)
    moved = noPieces()
    const open = step.kind === 'hold' ? atDoors(ground, starts) : starts
    restrict(best, 0, best.from.length, open, moved)
  }
  return settle(ground, score, step, index, starts, moved, after, spots)
}

/** Piece `p` of the step before, carried over the wait: for each start of the next, the best start before it. */
function addWindow(ground: Ground, from: Pieces, p: number, next: Step, clip: number, raw: Pieces): void {
  const window = waitRange(ground, next, from.length[p]!)
  if (window.from > window.to) return
  const k0 = from.from[p]!
  const k1 = from.to[p]!
  const value = from.value[p]!
  const slope = k0 === k1 ? 0 : from.slope[p]!
  const add = (start: number, end: number, v: number, s: number) => {
    const to = Math.min(end, clip)
    if (start <= to) addPiece(raw, start, to, v, s, 0)
  }
  if (slope === 0) add(k0 + window.from, k1 + window.to, value, 0)
  else if (slope > 0) {
    add(k0 + window.from, k1 + window.from, value, slope)
    add(k1 + window.from + 1, k1 + window.to, value + slope * (k1 - k0), 0)
  } else {
    add(k0 + window.from, k0 + window.to, value, 0)
    add(k0 + window.to + 1, k1 + window.to, value + slope, slope)
  }
}
