import type { Span } from '../calendar/spans.ts'
import { baysFor, type Gap, type Layer } from './layers.ts'
import { addPart, envelope, type Piece } from './pieces.ts'
import { type FreeBay, gridCeil, gridFloor, type Prepared } from './prepare.ts'
import type { Score } from './score.ts'
import { type Run, restrict } from './starts.ts'
import type { Step } from './types.ts'

/** The step of the chain that is being placed, with the starts that hours and crew leave it. */
export interface Placing {
  readonly prepared: Prepared
  readonly score: Score
  readonly step: Step
  readonly index: number
  readonly starts: readonly Run[]
}

/**
 * The cars that are ready for a step. `coming` may go into any bay, on arrival or by a move, and holds only starts of
 * the step. `staying` are those still in their bay, by gap: their pieces hold ready times, starts or not.
 */
export interface Ready {
  readonly coming: readonly Piece[]
  readonly staying: readonly Gap[]
}

/**
 * Places a step into every free span of every bay that can take it, from the cars that come and from those that stay,
 * as far as the span lasts to the step's end.
 */
export function placeStep(placing: Placing, ready: Ready): Layer {
  const stayingIn = new Map(ready.staying.map(({ span, pieces }) => [span, pieces]))
  const gaps = baysFor(placing.prepared, placing.step).flatMap(bay =>
    placeInBay(placing, ready.coming, stayingIn, bay),
  )
  return { step: placing.index, afterMove: false, gaps }
}

/** The spans in order of time, with a cursor over the cars that come. */
function placeInBay(
  placing: Placing,
  coming: readonly Piece[],
  stayingIn: ReadonlyMap<Span, readonly Piece[]>,
  bay: FreeBay,
): Gap[] {
  const { prepared, step } = placing
  const gaps: Gap[] = []
  const least = stayMinutes(step) ?? step.minutes
  let next = 0
  for (const span of bay.free) {
    const open = gridCeil(prepared, span.from)
    while ((coming[next]?.to ?? Number.POSITIVE_INFINITY) < open) next++
    const staying = stayingIn.get(span)
    const fits = staying !== undefined || span.to - span.from >= least
    if (!fits) continue
    const pieces = staying
      ? fitting(placing, bay, span, better(placing, staying, comingInto(prepared, span, coming, next)))
      : fitting(placing, bay, span, coming, next)
    if (pieces.length > 0) gaps.push({ bay, span, pieces })
  }
  return gaps
}

/** Minutes a hold needs its span for where the car may be moved inside it: to the moment it may go. */
function stayMinutes(step: Step): number | undefined {
  return step.kind === 'hold' && step.moveAfter != null ? Math.min(step.moveAfter, step.minutes) : undefined
}

/** The coming cars' pieces from index `first` on, cut to those that come while the span lasts. */
function comingInto(prepared: Prepared, span: Span, coming: readonly Piece[], first: number): Piece[] {
  const found: Piece[] = []
  const from = gridCeil(prepared, span.from)
  const to = gridFloor(prepared, span.to)
  let i = first
  for (let piece = coming[i]; piece && piece.from <= to; piece = coming[++i]) addPart(found, piece, from, to)
  return found
}

/** The starts at which a car is there, staying or come: at each the better of the two. */
function better({ starts }: Placing, staying: readonly Piece[], come: readonly Piece[]): Piece[] {
  return restrict(envelope([...staying, ...come]), starts)
}

/** The pieces from index `first` on, cut to the starts whose step ends, or is moved away, while the span is free. */
function fitting(
  { prepared, score, step, index }: Placing,
  bay: FreeBay,
  span: Span,
  pieces: readonly Piece[],
  first = 0,
): Piece[] {
  const fitted: Piece[] = []
  const needed = stayMinutes(step)
  const from = gridCeil(prepared, span.from)
  const cost = score.unlikedBay(index, bay.id)
  const last = gridFloor(prepared, span.to)
  let i = first
  for (let piece = pieces[i]; piece && piece.from <= last; piece = pieces[++i])
    addPart(fitted, piece, from, gridFloor(prepared, span.to - (needed ?? piece.length)), cost)
  return fitted
}
