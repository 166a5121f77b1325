/** The booking grid: starts fall on wall times a whole number of steps after local midnight. */
import { wallMinuteOf } from './instants.ts'

/** Whether the clock of `zone` shows a multiple of `gridMin` minutes after midnight at `at`. */
export function onGrid(at: number, gridMin: number, zone: string): boolean {
  return wallMinuteOf(at, zone) % gridMin === 0
}
