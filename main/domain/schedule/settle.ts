import { type Ground, gridCeil, gridFloor } from './ground.ts'
import { baysFor, type Layer, type Spot } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { addPiece, clearPieces, envelope, noPieces, type Pieces } from './pieces.ts'
import type { Score } from './score.ts'
import type { Starts } from './starts.ts'
import type { Step } from './types.ts'

/** The part of pieces `[first, last)` on the starts, each cut carrying its start's length. */
export function restrict(pieces: Pieces, first: number, last: number, starts: Starts, out: Pieces): void {
  if (first === last) return
  let s = firstAtLeast(starts.to, pieces.from[first]!)
  for (let p = first; p < last; p++) {
    while (s < starts.to.length && starts.to[s]! < pieces.from[p]!) s++
    for (let t = s; t < starts.to.length && starts.from[t]! <= pieces.to[p]!; t++) {
      const from = Math.max(pieces.from[p]!, starts.from[t]!)
      const to = Math.min(pieces.to[p]!, starts.to[t]!)
      const value = pieces.value[p]! + pieces.slope[p]! * (from - pieces.from[p]!)
      addPiece(out, from, to, value, pieces.slope[p]!, starts.length[t]!)
    }
  }
}

/**
 * Places a step: into every free span of every bay that can take it, from the cars that come (`moved`, sorted) and
 * from those that stay (`stayed`, by spot), as far as the span lasts to the step's end.
 */
export function settle(
  ground: Ground,
  score: Score,
  step: Step,
  index: number,
  starts: Starts,
  moved: Pieces | undefined,
  stayed: Pieces | undefined,
  staying: readonly Spot[] | undefined,
): Layer {
  const pieces = noPieces()
  const spots: Spot[] = []
  const raw = noPieces()
  const joined = noPieces()
  // Where the car may be moved inside the hold, the span need last only to the moment it may go.
  const needed =
    step.kind === 'hold' && step.moveAfter != null ? Math.min(step.moveAfter, step.minutes) : undefined
  for (const b of baysFor(ground, step)) {
    const bay = ground.bays[b]!
    const toll = score.bayToll(index, b)
    let m = 0
    let y = staying ? staying.findIndex(spot => spot.bay === b) : -1
    const movedCount = moved ? moved.from.length : 0
    for (let f = 0; f < bay.from.length; f++) {
      const spot = y >= 0 && y < staying!.length && staying![y]!.bay === b ? staying![y]! : undefined
      const stays = spot?.span === f
      if (stays) y++
      else if (m >= movedCount && !spot) break
      const open = gridCeil(ground, bay.from[f]!)
      while (m < movedCount && moved!.to[m]! < open) m++
      if (!stays && (m >= movedCount || bay.to[f]! - bay.from[f]! < (needed ?? step.minutes))) continue
      const first = pieces.from.length
      const add = (source: Pieces, p: number) => {
        const from = Math.max(source.from[p]!, open)
        const to = Math.min(source.to[p]!, gridFloor(ground, bay.to[f]! - (needed ?? source.length[p]!)))
        if (from > to) return
        const value = source.value[p]! + source.slope[p]! * (from - source.from[p]!) - toll
        addPiece(pieces, from, to, value, source.slope[p]!, source.length[p]!)
      }
      if (!stays)
        for (let p = m; p < movedCount && moved!.from[p]! * ground.grid + ground.gridFrom <= bay.to[f]!; p++)
          add(moved!, p)
      else {
        clearPieces(raw)
        clearPieces(joined)
        for (let p = spot.first; p < spot.last; p++)
          addPiece(raw, stayed!.from[p]!, stayed!.to[p]!, stayed!.value[p]!, stayed!.slope[p]!, 0)
        const close = gridFloor(ground, bay.to[f]!)
        for (let p = m; p < movedCount && moved!.from[p]! <= close; p++) {
          const from = Math.max(moved!.from[p]!, open)
          const value = moved!.value[p]! + moved!.slope[p]! * (from - moved!.from[p]!)
          addPiece(raw, from, Math.min(moved!.to[p]!, close), value, moved!.slope[p]!, 0)
        }
        envelope(raw, joined)
        clearPieces(raw)
        restrict(joined, 0, joined.from.length, starts, raw)
        for (let p = 0; p < raw.from.length; p++) add(raw, p)
      }
      if (pieces.from.length > first) spots.push({ bay: b, span: f, first, last: pieces.from.length })
    }
  }
  return { step: index, afterMove: false, pieces, spots }
}
