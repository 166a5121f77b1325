import { holdMoves } from './holdMoves.ts'
import { type Gap, type Layer, waitRange } from './layers.ts'
import { touching } from './openTime.ts'
import { addPart, envelope, type Piece, valueAt } from './pieces.ts'
import { type Placing, placeStep, type Ready } from './placeStep.ts'
import { gridFloor, type Prepared } from './prepare.ts'
import { dropOffPieces, type Score, scoreOf } from './score.ts'
import { type Run, restrict, startsOf } from './starts.ts'
import { stepAt } from './steps.ts'

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
  /** The starts that hours and crew leave each step, as far as the search came. */
  readonly starts: readonly (readonly Run[])[]
  /** One layer a step (two where a hold may be moved in); shorter than the chain where nothing is reached. */
  readonly layers: readonly Layer[]
  readonly complete: boolean
}

/**
 * Carries the sets of feasible starts through the chain. For each step, each bay and each free span of it the label
 * holds all starts there are and, as a function of the start, the best drop-off (then moves, then preferences), so
 * nothing is cut that any offer could need: the answer is exact on the grid.
 * @param before a search with the same query in a like problem: what the two have in common is taken over.
 */
export function search(prepared: Prepared, query: Query, before?: Reached): Reached {
  const steps = prepared.problem.newJob.steps
  const score = scoreOf(prepared, query.dropOff === 'latest')
  const common = before && commonWith(prepared, before)
  const starts = common ? before.starts.slice(0, common.steps) : []
  const layers = common ? before.layers.filter(layer => layer.step < common.steps) : []
  let previous = layers.at(-1)
  for (let index = starts.length; index < steps.length; index++) {
    const step = stepAt(prepared.problem, index)
    const known = common?.sameTime && before?.prepared.problem.newJob.steps[index] === step
    const own = (known && before.starts[index]) || startsOf(prepared, step, query.lo, query.hi)
    starts.push(own)
    const placing: Placing = { prepared, score, step, index, starts: own }
    const next = placeStep(placing, previous ? carriedOver(placing, previous) : arrivals(placing, query))
    if (next.gaps.length === 0) return { prepared, query, score, starts, layers, complete: false }
    layers.push(next)
    previous = next
    if (step.kind === 'hold' && step.moveAfter != null) {
      previous = holdMoves(prepared, score, next, step)
      if (previous.gaps.length === 0) return { prepared, query, score, starts, layers, complete: false }
      layers.push(previous)
    }
  }
  return { prepared, query, score, starts, layers, complete: true }
}

/** How many of the first steps two searches place alike, all of them reached; and whether hours and crew are the same. */
function commonWith(prepared: Prepared, { prepared: other, starts, complete }: Reached) {
  const sameTime = prepared.hours === other.hours && prepared.crew === other.crew
  if (!sameTime || prepared.bays !== other.bays) return { sameTime, steps: 0 }
  const { steps } = prepared.problem.newJob
  const differs = steps.findIndex((step, i) => step !== other.problem.newJob.steps[i])
  const reached = complete ? starts.length : starts.length - 1
  return { sameTime, steps: Math.min(differs === -1 ? steps.length : differs, reached) }
}

/** The cars that can be brought: the first step's starts, valued by their own minute, the drop-off. */
function arrivals(placing: Placing, query: Query): Ready {
  const { prepared, score } = placing
  const last = gridFloor(prepared, query.dropTo ?? query.hi)
  return { coming: dropOffPieces(prepared, score, startsByDoor(placing), last), staying: [] }
}

/** The starts at which a car may come into a bay: work begins in opening hours anyway, a hold only by an open door. */
function startsByDoor({ prepared, step, starts }: Placing): readonly Run[] {
  if (step.kind === 'work') return starts
  return starts.flatMap(({ from, to, length }) =>
    touching(prepared.doors, from, to).map(door => ({
      from: Math.max(from, door.from),
      to: Math.min(to, door.to),
      length,
    })),
  )
}

/** The cars of the step before, carried over the wait: in the bay they stand in, and moved out of it. */
function carriedOver(placing: Placing, previous: Layer): Ready {
  const { prepared, score, step } = placing
  const staying: Gap[] = []
  const moving: Piece[] = []
  for (const gap of previous.gaps) {
    const latest = gridFloor(prepared, gap.span.to)
    const ready: Piece[] = []
    for (const piece of gap.pieces) addAfterWait(ready, placing, piece, latest)
    const pieces = envelope(ready)
    if (pieces.length === 0) continue
    staying.push({ ...gap, pieces })
    if (!step.sameBay) for (const piece of pieces) addPart(moving, piece, piece.from, piece.to, score.move)
  }
  return { coming: restrict(envelope(moving), startsByDoor(placing)), staying }
}

/**
 * Appends a piece of the step before, carried over the wait: for each ready time of the next step, up to the `latest` at which
 * the bay is still the car's, the best start before it. A piece that rises is best at its last start, so its value
 * goes on rising as long as that start comes nearer and then stands; one that falls stands first.
 */
function addAfterWait(out: Piece[], { prepared, step }: Placing, piece: Piece, latest: number): void {
  const wait = waitRange(prepared, step, piece.length)
  if (wait.from > wait.to) return
  const { from: first, to: last, value } = piece
  const slope = first === last ? 0 : piece.slope
  const add = (from: number, to: number, at: number, by: number) => {
    const end = Math.min(to, latest)
    if (from <= end) out.push({ from, to: end, value: at, slope: by, length: 0 })
  }
  if (slope === 0) add(first + wait.from, last + wait.to, value, 0)
  else if (slope > 0) {
    add(first + wait.from, last + wait.from, value, slope)
    add(last + wait.from + 1, last + wait.to, valueAt(piece, last), 0)
  } else {
    add(first + wait.from, first + wait.to, value, 0)
    add(first + wait.to + 1, last + wait.to, value + slope, slope)
  }
}
