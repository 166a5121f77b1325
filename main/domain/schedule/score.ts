import { firstAtLeast } from './openTime.ts'
import { addPiece, noPieces, type Pieces } from './pieces.ts'
import { minuteAt, type Prepared } from './prepare.ts'
import type { Starts } from './starts.ts'

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
  /** Cost of step `index` starting in bay `b` that nobody prefers. */
  unlikedBay(index: number, b: number): number
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
    unlikedBay(index, b) {
      const bays = preferred[index]
      return bays && bays.length > 0 && !bays.includes(prepared.problem.bays[b]!.id) ? 1 : 0
    },
    openBeforeDropOff: value => Math.floor(value / minute),
  }
}

/** The value of every possible drop-off up to grid point `last`, before any step is placed. */
export function dropOffPieces(prepared: Prepared, score: Score, starts: Starts, last: number): Pieces {
  const pieces = noPieces()
  const { hours } = prepared
  // Headroom under each minute's worth, so that moves and preferences never borrow from it.
  const rest = score.minute / 2
  const closingCost = score.move / 2
  for (let i = 0; i < starts.from.length; i++) {
    let k = starts.from[i]!
    const to = Math.min(starts.to[i]!, last)
    const length = starts.length[i]!
    while (k <= to) {
      const t = minuteAt(prepared, k)
      const j = firstAtLeast(hours.to, t)
      const close = Math.min(to, Math.floor((hours.to[j]! - 1 - prepared.gridFrom) / prepared.grid))
      if (!score.latest) {
        addPiece(pieces, { from: k, to, value: rest - score.minute * t, slope: score.slope, length })
        k = to + 1
      } else {
        const value = (hours.before[j]! + t - hours.from[j]!) * score.minute + rest
        if (t === hours.to[j]!) {
          addPiece(pieces, { from: k, to: k, value: value - closingCost, slope: 0, length })
          k++
        } else {
          addPiece(pieces, { from: k, to: close, value, slope: score.slope, length })
          k = close + 1
        }
      }
    }
  }
  return pieces
}
