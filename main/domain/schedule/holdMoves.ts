import type { Span } from '../calendar/spans.ts'
import { baysFor, type Gap, type Layer } from './layers.ts'
import { firstEndingFrom, touching } from './openTime.ts'
import { addPart, envelope, type Piece } from './pieces.ts'
import { type FreeBay, gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Score } from './score.ts'
import type { Hold } from './types.ts'

/** Grid steps from a hold's start to the first and last moment the car may be moved in it, its end not included. */
export function moveRange({ grid }: Prepared, hold: Hold): Span {
  const after = hold.moveAfter ?? hold.minutes
  return { from: Math.ceil(after / grid), to: Math.ceil(hold.minutes / grid) - 1 }
}

/** Pieces told apart by the free span in which the hold ends. */
type Ends = Map<Span, Piece[]>

function endingIn(ends: Ends, span: Span): Piece[] {
  const pieces = ends.get(span) ?? []
  ends.set(span, pieces)
  return pieces
}

/**
 * The layer after a hold in which the car may be moved once: for every gap in which the hold can end, the cars that
 * stood there all along and those moved in from another bay while the doors were open, told by the hold's start.
 */
export function holdMoves(prepared: Prepared, score: Score, layer: Layer, hold: Hold): Layer {
  const ends: Ends = new Map()
  const able = baysFor(prepared, hold)
  for (const gap of layer.gaps) {
    const stays = endingIn(ends, gap.span)
    for (const piece of gap.pieces) {
      addPart(stays, piece, piece.from, gridFloor(prepared, gap.span.to - hold.minutes))
      const moving: Moving = { prepared, hold, piece, freeUntil: gap.span.to, cost: score.move }
      for (const bay of able) if (bay !== gap.bay) addMoves(moving, bay, ends)
    }
  }
  const gaps = able.flatMap(bay =>
    bay.free.flatMap((span): Gap[] => {
      const pieces = envelope(ends.get(span) ?? []).map(piece => ({ ...piece, length: hold.minutes }))
      return pieces.length > 0 ? [{ bay, span, pieces }] : []
    }),
  )
  return { step: layer.step, afterMove: true, gaps }
}

/** A piece of the hold's starts, in a bay that is free until a minute, about to be moved at a cost. */
interface Moving {
  readonly prepared: Prepared
  readonly hold: Hold
  readonly piece: Piece
  readonly freeUntil: number
  readonly cost: number
}

/** The moves into every span of a bay that lasts to the hold's end. */
function addMoves({ prepared, hold, piece, freeUntil, cost }: Moving, { free }: FreeBay, ends: Ends): void {
  const range = moveRange(prepared, hold)
  const firstMove = piece.from + range.from
  const lastMove = Math.min(piece.to + range.to, gridFloor(prepared, freeUntil))
  const firstEnd = minuteAt(prepared, piece.from) + hold.minutes
  let i = firstEndingFrom(free, firstEnd)
  for (let span = free[i]; span; span = free[++i]) {
    const earliest = Math.max(firstMove, gridCeil(prepared, span.from))
    if (earliest > lastMove) return
    const lastStart = gridFloor(prepared, span.to - hold.minutes)
    for (const door of touching(prepared.doors, earliest, lastMove)) {
      const first = Math.max(door.from, earliest)
      const to = Math.min(Math.min(door.to, lastMove) - range.from, lastStart)
      addPart(endingIn(ends, span), piece, first - range.to, to, cost)
    }
  }
}
