import type { BoardView, StayView } from '../../../../main/api/views.ts'
import { rowOf } from '../boardTypes.ts'
import type { Move } from './useMove.ts'

type Place = Pick<Move, 'bayId' | 'startAt'>

/**
 * The next start `minutes` on, leaping over closed hours: from the last start of an opening to the first of the next,
 * and back. `minutes` is a multiple of the grid, negative for earlier.
 */
export function nudge(board: BoardView, place: Place, minutes: number): Place {
  const target = place.startAt + minutes
  if (board.open.some(span => span.from <= target && target < span.to)) return { ...place, startAt: target }
  if (minutes > 0) {
    const next = board.open.find(span => span.from > place.startAt)
    return next
      ? { ...place, startAt: Math.max(next.from, Math.min(target, next.to - board.gridMin)) }
      : place
  }
  const before = board.open.filter(span => span.to <= place.startAt).at(-1)
  return before ? { ...place, startAt: before.to - board.gridMin } : place
}

/** The same start one bay up (-1) or down (1). */
export function otherBay(board: BoardView, place: Place, direction: 1 | -1): Place {
  const bay = board.bays[rowOf(board, place.bayId) + direction]
  return bay ? { ...place, bayId: bay.id } : place
}

/** The stay to look at next, going by arrow: along the bay in time, or to the nearest in time in the next bay that has one. */
export function neighbour(
  board: BoardView,
  from: StayView,
  arrow: 'left' | 'right' | 'up' | 'down',
): StayView {
  const inBay = (bayId: string) =>
    board.stays.filter(stay => stay.bayId === bayId).sort((a, b) => a.fromAt - b.fromAt)
  if (arrow === 'left' || arrow === 'right') {
    const row = inBay(from.bayId)
    const at = row.findIndex(stay => stay.jobId === from.jobId && stay.fromAt === from.fromAt)
    return row[at + (arrow === 'right' ? 1 : -1)] ?? from
  }
  const direction = arrow === 'down' ? 1 : -1
  for (
    let row = rowOf(board, from.bayId) + direction;
    row >= 0 && row < board.bays.length;
    row += direction
  ) {
    const stays = inBay(board.bays[row]!.id)
    if (stays.length > 0)
      return stays.reduce((best, stay) =>
        Math.abs(stay.fromAt - from.fromAt) < Math.abs(best.fromAt - from.fromAt) ? stay : best,
      )
  }
  return from
}
