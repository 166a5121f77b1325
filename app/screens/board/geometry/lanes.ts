/** The rows of the board, one a bay, all of one height. */
export interface Lanes {
  readonly top: number
  readonly height: number
  readonly count: number
}

/** The upper edge of a bay's row. */
export function laneTop(lanes: Lanes, index: number): number {
  return lanes.top + index * lanes.height
}

/** The row under a pixel, held to the first and last. */
export function laneAt(lanes: Lanes, y: number): number {
  return Math.min(lanes.count - 1, Math.max(0, Math.floor((y - lanes.top) / lanes.height)))
}

/** The row height that fills the room below the bar, within what can be read and what is still one look. */
export function laneHeight(room: number, count: number, least: number, most: number): number {
  return Math.round(Math.min(most, Math.max(least, room / Math.max(1, count))))
}
