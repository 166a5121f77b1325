import { holdMoves } from './holdMoves.ts'
import { type Gap, type Layer, waitRange } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import {
  addPart,
  addPiece,
  clearPieces,
  envelope,
  noPieces,
  type Piece,
  type Pieces,
  valueAt,
} from './pieces.ts'
import { type Placing, placeStep, type Ready } from './placeStep.ts'
import { gridFloor, type Prepared } from './prepare.ts'
import { dropOffPieces, type Score, scoreOf } from './score.ts'
import { restrict, type Starts, startsOf } from './starts.ts'

/** What a search looks for: everything between two minutes, with the latest or the earliest drop-off. */
export interface Query {
  readonly lo: number
  readonly hi: number
  readonly dropOff: 'latest' | 'earliest'
  /** No drop-off after this minute. */
  readonly dropTo?: number
}

export interface Reached {
  readonly prepared: Prepared
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
export function search(prepared: Prepared, query: Query): Reached {
  const steps = prepared.problem.newJob.steps
  const score = scoreOf(prepared, query.dropOff === 'latest')
  const layers: Layer[] = []
  let previous: Layer | undefined
  for (const [index, step] of steps.entries()) {
    const placing: Placing = {
      prepared,
      score,
      step,
      index,
      starts: startsOf(prepared, step, query.lo, query.hi),
    }
    const next = placeStep(placing, previous ? carriedOver(placing, previous) : arrivals(placing, query))
    if (next.gaps.length === 0) return { prepared, query, score, layers, complete: false }
    layers.push(next)
    previous = next
    if (step.kind === 'hold' && step.moveAfter != null) {
      previous = holdMoves(prepared, score, next, step)
      if (previous.gaps.length === 0) return { prepared, query, score, layers, complete: false }
      layers.push(previous)
    }
  }
  return { prepared, query, score, layers, complete: true }
}

/** The cars that can be brought: the first step's starts, valued by their own minute, the drop-off. */
function arrivals(placing: Placing, query: Query): Ready {
  const { prepared, score } = placing
  const last = gridFloor(prepared, query.dropTo ?? query.hi)
  const coming = dropOffPieces(prepared, score, startsByDoor(placing), last)
  return { coming, staying: noPieces(), gaps: [] }
}

/** The starts at which a car may come into a bay: work begins in opening hours anyway, a hold only by an open door. */
function startsByDoor({ prepared, step, starts }: Placing): Starts {
  return step.kind === 'hold' ? atDoors(prepared, starts) : starts
}

/** The starts at which the shop's doors are open. */
function atDoors(prepared: Prepared, starts: Starts): Starts {
  const open: Starts = { from: [], to: [], length: [] }
  const { doorFrom, doorTo } = prepared
  for (let i = 0; i < starts.from.length; i++)
    for (let d = firstAtLeast(doorTo, starts.from[i]!); d < doorTo.length; d++) {
      if (doorFrom[d]! > starts.to[i]!) break
      open.from.push(Math.max(starts.from[i]!, doorFrom[d]!))
      open.to.push(Math.min(starts.to[i]!, doorTo[d]!))
      open.length.push(starts.length[i]!)
    }
  return open
}

/** The cars of the step before, carried over the wait: in the bay they stand in, and moved out of it. */
function carriedOver(placing: Placing, previous: Layer): Ready {
  const { prepared, score, step } = placing
  const staying = noPieces()
  const gaps: Gap[] = []
  const raw = noPieces()
  for (const gap of previous.gaps) {
    clearPieces(raw)
    const latest = gridFloor(prepared, prepared.bays[gap.bay]!.to[gap.span]!)
    for (let p = gap.first; p < gap.last; p++) addAfterWait(placing, previous.pieces, p, { latest, raw })
    const first = staying.from.length
    if (raw.from.length > 0) envelope(raw, staying)
    if (staying.from.length > first) gaps.push({ ...gap, first, last: staying.from.length })
  }
  if (step.sameBay || gaps.length === 0) return { coming: noPieces(), staying, gaps }
  clearPieces(raw)
  for (let p = 0; p < staying.from.length; p++) addPart(raw, staying, p, { cost: score.move, length: 0 })
  const best = noPieces()
  envelope(raw, best)
  return { coming: restrict(best, startsByDoor(placing)), staying, gaps }
}

/**
 * Piece `p` of the step before, carried over the wait: for each ready time of the next step, up to the `latest` at which
 * the bay is still the car's, the best start before it. A piece that rises is best at its last start, so its value
 * goes on rising as long as that start comes nearer and then stands; one that falls stands first.
 */
function addAfterWait(
  { prepared, step }: Placing,
  from: Pieces,
  p: number,
  { latest, raw }: { readonly latest: number; readonly raw: Pieces },
): void {
  const wait = waitRange(prepared, step, from.length[p]!)
  if (wait.from > wait.to) return
  const first = from.from[p]!
  const last = from.to[p]!
  const value = from.value[p]!
  const slope = first === last ? 0 : from.slope[p]!
  const add = (piece: Piece) => {
    const to = Math.min(piece.to, latest)
    if (piece.from <= to) addPiece(raw, { ...piece, to })
  }
  if (slope === 0) add({ from: first + wait.from, to: last + wait.to, value, slope })
  else if (slope > 0) {
    add({ from: first + wait.from, to: last + wait.from, value, slope })
    add({ from: last + wait.from + 1, to: last + wait.to, value: valueAt(from, p, last), slope: 0 })
  } else {
    add({ from: first + wait.from, to: first + wait.to, value, slope: 0 })
    add({ from: first + wait.to + 1, to: last + wait.to, value: value + slope, slope })
  }
}
