import { baysFor, type Gap, type Layer } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { addPart, envelope, noPieces, type Pieces } from './pieces.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Score } from './score.ts'
import type { Hold } from './types.ts'

/** Grid steps from a hold's start to the first and last moment the car may be moved in it, its end not included. */
export function moveRange(prepared: Prepared, hold: Hold): { from: number; to: number } {
  const after = hold.moveAfter ?? hold.minutes
  return { from: Math.ceil(after / prepared.grid), to: Math.ceil(hold.minutes / prepared.grid) - 1 }
}

/** Pieces told apart by the bay and the free span in which the hold ends. */
interface Buckets {
  at(bay: number, span: number): Pieces
  /** In order of bay, then span. */
  all(): { bay: number; span: number; raw: Pieces }[]
}

function buckets(): Buckets {
  const bays: Pieces[][] = []
  return {
    at(bay, span) {
      bays[bay] ??= []
      const spans = bays[bay]
      spans[span] ??= noPieces()
      return spans[span]
    },
    // `flatMap` passes over the holes.
    all: () => bays.flatMap((spans, bay) => spans.flatMap((raw, span) => ({ bay, span, raw }))),
  }
}

/**
 * The layer after a hold in which the car may be moved once: for every gap in which the hold can end, the cars that
 * stood there all along and those moved in from another bay while the doors were open, told by the hold's start.
 */
export function holdMoves(prepared: Prepared, score: Score, layer: Layer, hold: Hold): Layer {
  const ends = buckets()
  const able = baysFor(prepared, hold)
  for (const gap of layer.gaps) {
    const freeUntil = prepared.bays[gap.bay]!.to[gap.span]!
    const stays = ends.at(gap.bay, gap.span)
    for (let p = gap.first; p < gap.last; p++) {
      addPart(stays, layer.pieces, p, { to: gridFloor(prepared, freeUntil - hold.minutes) })
      const moving: Moving = { prepared, hold, from: layer.pieces, p, freeUntil, cost: score.move }
      for (const bay of able) if (bay !== gap.bay) addMoves(moving, bay, ends)
    }
  }
  const pieces = noPieces()
  const gaps: Gap[] = []
  for (const { bay, span, raw } of ends.all()) {
    const first = pieces.from.length
    if (raw.from.length > 0) envelope(raw, pieces)
    if (pieces.from.length === first) continue
    pieces.length.fill(hold.minutes, first)
    gaps.push({ bay, span, first, last: pieces.from.length })
  }
  return { step: layer.step, afterMove: true, pieces, gaps }
}

/** Piece `p` of the hold's starts, in a bay that is free until a minute, about to be moved at a cost. */
interface Moving {
  readonly prepared: Prepared
  readonly hold: Hold
  readonly from: Pieces
  readonly p: number
  readonly freeUntil: number
  readonly cost: number
}

/** The moves into every span of a bay that lasts to the hold's end. */
function addMoves({ prepared, hold, from, p, freeUntil, cost }: Moving, bay: number, ends: Buckets): void {
  const target = prepared.bays[bay]!
  const range = moveRange(prepared, hold)
  const { doorFrom, doorTo } = prepared
  const firstMove = from.from[p]! + range.from
  const lastMove = Math.min(from.to[p]! + range.to, gridFloor(prepared, freeUntil))
  const firstEnd = minuteAt(prepared, from.from[p]!) + hold.minutes
  for (let span = firstAtLeast(target.to, firstEnd); span < target.from.length; span++) {
    const open = gridCeil(prepared, target.from[span]!)
    if (open > lastMove) return
    const lastStart = gridFloor(prepared, target.to[span]! - hold.minutes)
    const earliest = Math.max(firstMove, open)
    for (let d = firstAtLeast(doorTo, earliest); d < doorTo.length && doorFrom[d]! <= lastMove; d++) {
      const first = Math.max(doorFrom[d]!, earliest)
      const last = Math.min(doorTo[d]!, lastMove)
      if (first > last) continue
      const to = Math.min(last - range.from, lastStart)
      addPart(ends.at(bay, span), from, p, { from: first - range.to, to, cost })
    }
  }
}
