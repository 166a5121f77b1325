/** A booking grid as points in time: `gridFrom + k * gridMin`, epoch minutes. */
export interface Grid {
  readonly gridMin: number
  readonly gridFrom: number
}

/** The grid point at or after `at`. */
export function gridUp({ gridMin, gridFrom }: Grid, at: number): number {
  return gridFrom + Math.ceil((at - gridFrom) / gridMin) * gridMin
}

/** The grid point at or before `at`. */
export function gridDown({ gridMin, gridFrom }: Grid, at: number): number {
  return gridFrom + Math.floor((at - gridFrom) / gridMin) * gridMin
}
