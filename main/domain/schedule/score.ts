import { touching } from './openTime.ts'
import type { Piece } from './pieces.ts'
import { gridCeil, gridFloor, minuteAt, type Prepared } from './prepare.ts'
import type { Run } from './starts.ts'

/**
 * How ways to the same start are compared, as one integer: the drop-off first, then fewer moves, then the tie-breaks.
 * Looking for the latest drop-off, the first part counts opening minutes (for a given handover, later in opening
 * minutes is exactly fewer blocked minutes) and, after the moves, a closing minute loses to the next opening, which
 * lies later without blocking more. Looking for the earliest, it counts plain minutes, negated.
 */
export interface Score {
  readonly latest: boolean
  /** Worth of one minute of drop-off. */
  readonly minute: number
  /** Cost of one move. */
  readonly move: number
  /** Change of value per grid point where the drop-off moves along with the start. */
  readonly slope: number
  /** Cost of step `index` starting in a bay that nobody prefers. */
  unlikedBay(index: number, bay: string): number
  /** Opening minutes before the drop-off, read back from a value ('latest' only). */
  openBeforeDropOff(value: number): number
}

export function scoreOf(prepared: Prepared, latest: boolean): Score {
  const { steps, preferBays } = prepared.problem.newJob
  const afterOpening = steps.length + 1
  const move = 2 * afterOpening
  const minute = 4 * afterOpening * move
  const preferred = steps.map(step => step.preferBays ?? preferBays)
  return {
    latest,
    minute,
    move,
    slope: (latest ? minute : -minute) * prepared.grid,
    unlikedBay(index, bay) {
      const bays = preferred[index]
      return bays && bays.length > 0 && !bays.includes(bay) ? 1 : 0
    },
    openBeforeDropOff: value => Math.floor(value / minute),
  }
}

/** The value of every possible drop-off up to grid point `last`, before any step is placed. */
export function dropOffPieces(prepared: Prepared, score: Score, runs: readonly Run[], last: number): Piece[] {
  // Headroom under each minute's worth, so that moves and preferences never borrow from it.
  const rest = score.minute / 2
  return runs.flatMap(({ from, to: end, length }): Piece[] => {
    const to = Math.min(end, last)
    if (from > to) return []
    const { slope, minute, latest } = score
    if (!latest) return [{ from, to, value: rest - minute * minuteAt(prepared, from), slope, length }]
    const openings = touching(prepared.hours.openings, minuteAt(prepared, from), minuteAt(prepared, to))
    return openings.flatMap(opening => {
      const worth = (k: number) => (opening.before + minuteAt(prepared, k) - opening.from) * minute + rest
      const first = Math.max(from, gridCeil(prepared, opening.from))
      const closing = gridFloor(prepared, opening.to - 1) + 1
      const pieces: Piece[] = []
      const before = Math.min(to, closing - 1)
      if (first <= before) pieces.push({ from: first, to: before, value: worth(first), slope, length })
      if (minuteAt(prepared, closing) === opening.to && from <= closing && closing <= to) {
        const value = worth(closing) - score.move / 2
        pieces.push({ from: closing, to: closing, value, slope: 0, length })
      }
      return pieces
    })
  })
}
