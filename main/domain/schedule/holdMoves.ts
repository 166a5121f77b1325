import { type Ground, gridCeil, gridFloor, minuteAt } from './ground.ts'
import { baysFor, type Layer, type Spot } from './layers.ts'
import { firstAtLeast } from './openTime.ts'
import { addPart, envelope, noPieces, type Pieces } from './pieces.ts'
import type { Score } from './score.ts'
import type { Hold } from './types.ts'

/** Grid steps from a hold's start to the first and last moment the car may be moved in it, its end not included. */
export function moveRange(ground: Ground, hold: Hold): { from: number; to: number } {
  const after = hold.moveAfter ?? hold.minutes
  return { from: Math.ceil(after / ground.grid), to: Math.ceil(hold.minutes / ground.grid) - 1 }
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
 * The layer after a hold in which the car may be moved once: for every spot in which the hold can end, the cars that
 * stood there all along and those moved in from another bay while the doors were open, told by the hold's start.
 */
export function holdMoves(ground: Ground, score: Score, layer: Layer, hold: Hold): Layer {
  const ends = buckets()
  const able = baysFor(ground, hold)
  for (const spot of layer.spots) {
    const freeUntil = ground.bays[spot.bay]!.to[spot.span]!
    const stays = ends.at(spot.bay, spot.span)
    for (let p = spot.first; p < spot.last; p++) {
      addPart(stays, layer.pieces, p, { to: gridFloor(ground, freeUntil - hold.minutes) })
      const moving: Moving = { ground, hold, from: layer.pieces, p, freeUntil, cost: score.move }
      for (const bay of able) if (bay !== spot.bay) addMoves(moving, bay, ends)
    }
  }
  const pieces = noPieces()
  const spots: Spot[] = []
  for (const { bay, span, raw } of ends.all()) {
    const first = pieces.from.length
    if (raw.from.length > 0) envelope(raw, pieces)
    if (pieces.from.length === first) continue
    pieces.length.fill(hold.minutes, first)
    spots.push({ bay, span, first, last: pieces.from.length })
  }
  return { step: layer.step, afterMove: true, pieces, spots }
}

/** Piece `p` of the hold's starts, in a bay that is free until a minute, about to be moved at a cost. */
interface Moving {
  readonly ground: Ground
  readonly hold: Hold
  readonly from: Pieces
  readonly p: number
  readonly freeUntil: number
  readonly cost: number
}

/** The moves into every span of a bay that lasts to the hold's end. */
function addMoves({ ground, hold, from, p, freeUntil, cost }: Moving, bay: number, ends: Buckets): void {
  const target = ground.bays[bay]!
  const range = moveRange(ground, hold)
  const { doorFrom, doorTo } = ground
  const firstMove = from.from[p]! + range.from
  const lastMove = Math.min(from.to[p]! + range.to, gridFloor(ground, freeUntil))
  const firstEnd = minuteAt(ground, from.from[p]!) + hold.minutes
  for (let span = firstAtLeast(target.to, firstEnd); span < target.from.length; span++) {
    const open = gridCeil(ground, target.from[span]!)
    if (open > lastMove) return
    const lastStart = gridFloor(ground, target.to[span]! - hold.minutes)
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
