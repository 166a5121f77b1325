import { type Ground, gridCeil, gridFloor } from './ground.ts'
import { baysFor, type Layer, type Spot } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { addPiece, envelope, noPieces, type Pieces } from './pieces.ts'
import type { Score } from './score.ts'
import type { Hold } from './types.ts'

/** Grid steps from a hold's start to the first and last moment the car may be moved in it, its end not included. */
export function moveRange(ground: Ground, hold: Hold): { from: number; to: number } {
  return { from: Math.ceil(hold.moveAfter! / ground.grid), to: Math.ceil(hold.minutes / ground.grid) - 1 }
}

/**
 * The layer after a hold in which the car may be moved once: for every spot in which the hold can end, the cars that
 * stood there all along and those moved in from another bay while the doors were open, told by the hold's start.
 */
export function holdMoves(ground: Ground, score: Score, layer: Layer, hold: Hold): Layer {
  const buckets = new Map<number, Pieces>()
  const widest = 1 + Math.max(...ground.bays.map(bay => bay.from.length))
  const bucket = (bay: number, span: number) => {
    const key = bay * widest + span
    let pieces = buckets.get(key)
    if (!pieces) {
      pieces = noPieces()
      buckets.set(key, pieces)
    }
    return pieces
  }
  const able = baysFor(ground, hold)
  for (const spot of layer.spots) {
    const stay = ground.bays[spot.bay]!.to[spot.span]!
    for (let p = spot.first; p < spot.last; p++) {
      addPart(layer.pieces, p, 0, gridFloor(ground, stay - hold.minutes), 0, bucket(spot.bay, spot.span))
      for (const b of able)
        if (b !== spot.bay) addMoves(ground, score, layer.pieces, p, hold, stay, b, bucket)
    }
  }
  const pieces = noPieces()
  const spots: Spot[] = []
  for (const key of [...buckets.keys()].sort((a, b) => a - b)) {
    const first = pieces.from.length
    const raw = buckets.get(key)!
    if (raw.from.length > 0) envelope(raw, pieces)
    if (pieces.from.length === first) continue
    pieces.length.fill(hold.minutes, first)
    spots.push({ bay: Math.floor(key / widest), span: key % widest, first, last: pieces.from.length })
  }
  return { step: layer.step, afterMove: true, pieces, spots }
}

/** Moves of piece `p`, whose bay is free until `stay`, into every span of bay `b` that lasts to the hold's end. */
function addMoves(
  ground: Ground,
  score: Score,
  from: Pieces,
  p: number,
  hold: Hold,
  stay: number,
  b: number,
  bucket: (bay: number, span: number) => Pieces,
): void {
  const bay = ground.bays[b]!
  const range = moveRange(ground, hold)
  const { doorFrom, doorTo } = ground
  const firstMove = from.from[p]! + range.from
  const lastMove = Math.min(from.to[p]! + range.to, gridFloor(ground, stay))
  const firstEnd = ground.gridFrom + from.from[p]! * ground.grid + hold.minutes
  for (let f = firstAtLeast(bay.to, firstEnd); f < bay.from.length; f++) {
    const open = gridCeil(ground, bay.from[f]!)
    if (open > lastMove) return
    const lastStart = gridFloor(ground, bay.to[f]! - hold.minutes)
    const earliest = Math.max(firstMove, open)
    for (let d = firstAtLeast(doorTo, earliest); d < doorTo.length && doorFrom[d]! <= lastMove; d++) {
      const m0 = Math.max(doorFrom[d]!, earliest)
      const m1 = Math.min(doorTo[d]!, lastMove)
      if (m0 <= m1)
        addPart(from, p, m0 - range.to, Math.min(m1 - range.from, lastStart), score.move, bucket(b, f))
    }
  }
}

function addPart(from: Pieces, p: number, k0: number, k1: number, cost: number, out: Pieces): void {
  const start = Math.max(from.from[p]!, k0)
  const end = Math.min(from.to[p]!, k1)
  if (start > end) return
  const value = from.value[p]! + from.slope[p]! * (start - from.from[p]!) - cost
  addPiece(out, start, end, value, from.slope[p]!, from.length[p]!)
}
