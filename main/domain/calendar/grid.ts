/** The booking grid: starts fall on wall times a whole number of steps after local midnight. */
import { addDays, dateOf, startOfDay, zonedOf } from './instants.ts'

/** Whether the clock of `zone` shows a multiple of `gridMin` minutes after midnight at `at`. */
export function onGrid(at: number, gridMin: number, zone: string): boolean {
  return pastGrid(zonedOf(at, zone), gridMin) === 0
}

/**
 * The first minute at or after `at` that lies on the grid. Local midnight always does, also where `gridMin` does not
 * divide the day. A clock change is stepped over on the wall clock: the grid is what people read there.
 */
export function ceilToGrid(at: number, gridMin: number, zone: string): number {
  const here = zonedOf(at, zone)
  const past = pastGrid(here, gridMin)
  if (past === 0) return at
  const next = at + gridMin - past
  const midnight = startOfDay(dateOf(addDays(at, 1, zone), zone), zone)
  const there = zonedOf(next, zone)
  if (there.offsetNanoseconds === here.offsetNanoseconds) return Math.min(next, midnight)
  // The clock changes before the next step: look at the minutes one by one from here.
  let minute = at + 1
  while (!onGrid(minute, gridMin, zone)) minute++
  return minute
}

function pastGrid(time: Temporal.ZonedDateTime, gridMin: number): number {
  return (time.hour * 60 + time.minute) % gridMin
}
