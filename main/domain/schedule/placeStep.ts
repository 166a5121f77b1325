import { baysFor, type Gap, type Layer } from './layers.ts'
import { addPart, envelope, noPieces, type Pieces } from './pieces.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Score } from './score.ts'
import { restrict, type Starts } from './starts.ts'
import type { Step } from './types.ts'

/** The step of the chain that is being placed, with the starts that hours and crew leave it. */
export interface Placing {
  readonly prepared: Prepared
  readonly score: Score
  readonly step: Step
  readonly index: number
  readonly starts: Starts
}

/**
 * The cars that are ready for a step. `coming` may go into any bay, on arrival or by a move, and holds only starts of
 * the step. `staying` are those still in their bay, by gap: their pieces hold ready times, starts or not.
 */
export interface Ready {
  readonly coming: Pieces
  readonly staying: Pieces
  readonly gaps: readonly Gap[]
}

/** One free span of a bay; `open` is its first grid point. */
interface FreeSpan {
  readonly bay: number
  readonly span: number
  readonly open: number
  readonly closeAt: number
}

/**
 * Places a step into every free span of every bay that can take it, from the cars that come and from those that stay,
 * as far as the span lasts to the step's end.
 */
export function placeStep(placing: Placing, ready: Ready): Layer {
  const pieces = noPieces()
  const gaps: Gap[] = []
  for (const bay of baysFor(placing.prepared, placing.step)) placeInBay(placing, ready, bay, { pieces, gaps })
  return { step: placing.index, afterMove: false, pieces, gaps }
}

/** The spans in order of time, with one cursor over the cars that come and one over those that stay here. */
function placeInBay(
  placing: Placing,
  { coming, staying, gaps }: Ready,
  bay: number,
  out: { readonly pieces: Pieces; readonly gaps: Gap[] },
): void {
  const { prepared, step } = placing
  const { from, to } = prepared.bays[bay]!
  const here = gaps.filter(gap => gap.bay === bay)
  const least = stayMinutes(step) ?? step.minutes
  const count = coming.from.length
  let next = 0
  let first = 0
  for (let span = 0; span < from.length; span++) {
    const stays = here[next]?.span === span ? here[next++] : undefined
    if (!stays && first >= count && next >= here.length) return
    const free: FreeSpan = { bay, span, open: gridCeil(prepared, from[span]!), closeAt: to[span]! }
    while (first < count && coming.to[first]! < free.open) first++
    const before = out.pieces.from.length
    if (stays) {
      const joined = joinedIn(placing, free, { pieces: coming, first }, { pieces: staying, gap: stays })
      addFitting(placing, free, { pieces: joined, first: 0 }, out.pieces)
    } else if (first < count && free.closeAt - from[span]! >= least)
      addFitting(placing, free, { pieces: coming, first }, out.pieces)
    const last = out.pieces.from.length
    if (last > before) out.gaps.push({ bay, span, first: before, last })
  }
}

/** Minutes a hold needs its span for where the car may be moved inside it: to the moment it may go. */
function stayMinutes(step: Step): number | undefined {
  return step.kind === 'hold' && step.moveAfter != null ? Math.min(step.moveAfter, step.minutes) : undefined
}

/** The starts in one span at which a car is there, staying or come: at each the better of the two. */
function joinedIn(
  { prepared, starts }: Placing,
  { open, closeAt }: FreeSpan,
  coming: { readonly pieces: Pieces; readonly first: number },
  staying: { readonly pieces: Pieces; readonly gap: Gap },
): Pieces {
  const all = noPieces()
  const close = gridFloor(prepared, closeAt)
  for (let p = staying.gap.first; p < staying.gap.last; p++) addPart(all, staying.pieces, p, { length: 0 })
  const { pieces } = coming
  for (let p = coming.first; p < pieces.from.length && pieces.from[p]! <= close; p++)
    addPart(all, pieces, p, { from: open, to: close, length: 0 })
  const best = noPieces()
  envelope(all, best)
  return restrict(best, starts)
}

/** The pieces from `first` on, cut to the starts whose step ends, or is moved away, while the span is free. */
function addFitting(
  { prepared, score, step, index }: Placing,
  { bay, open, closeAt }: FreeSpan,
  { pieces, first }: { readonly pieces: Pieces; readonly first: number },
  out: Pieces,
): void {
  const needed = stayMinutes(step)
  const cost = score.unlikedBay(index, bay)
  for (let p = first; p < pieces.from.length && minuteAt(prepared, pieces.from[p]!) <= closeAt; p++)
    addPart(out, pieces, p, {
      from: open,
      to: gridFloor(prepared, closeAt - (needed ?? pieces.length[p]!)),
      cost,
    })
}
