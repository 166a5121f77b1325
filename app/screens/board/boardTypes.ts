import type { BoardView, StayView } from '../../../main/api/views.ts'
import type { Lanes } from './geometry/lanes.ts'
import type { TimeAxis } from './geometry/timeAxis.ts'

/** What a block is drawn with, on the board as on an offer's small one. */
export interface BlockCanvas {
  board: Pick<BoardView, 'open' | 'profiles' | 'nowAt'>
  axis: TimeAxis
  unit: number
}

/** What every layer draws with. */
export interface Canvas {
  board: BoardView
  axis: TimeAxis
  lanes: Lanes
  /** Pixels of one sixteenth of the root font size: text and strokes grow with the screen. */
  unit: number
}

/** The bay's row of a stay, or -1 for a bay that is no longer shown. */
export function rowOf(board: BoardView, bayId: string): number {
  return board.bays.findIndex(bay => bay.id === bayId)
}

/** One stay among those of its job and others: a job may stand in a bay twice. */
export function keyOf(stay: StayView): string {
  return `${stay.jobId}:${stay.fromAt}`
}
