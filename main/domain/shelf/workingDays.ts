/** Lead times counted in a supplier's working days, and the dates they lead to. */

import { dayNumber, weekdayOf } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { addTo, chanceOf } from './chances.ts'
import { normalShare } from './normal.ts'
import type { LeadTime, Supplier } from './supplier.ts'

/** A test of whether a day number is a working day. */
export type WorkingDay = (day: number) => boolean

// Two years without a working day is a mistake in the calendar, not a holiday.
const LONGEST_CLOSURE = 730

/** The supplier's working days. */
export function workingDayOf(supplier: Pick<Supplier, 'weekdays' | 'closedOn'>): WorkingDay {
  const weekdays = new Set(supplier.weekdays)
  const closed = new Set(supplier.closedOn.map(date => dayNumber(date, 'closedOn')))
  return day => weekdays.has(weekdayOf(day)) && !closed.has(day)
}

/** The first working day on or after `day`. */
export function nextWorkingDay(day: number, works: WorkingDay): number {
  for (let next = day; next <= day + LONGEST_CLOSURE; next++) if (works(next)) return next
  refuse(
    'never-works',
    { closedOn: day },
    say('No working day in two years from here; check the working days and closures.'),
  )
}

/** The day `count` working days after `day`; 0 is the first working day on or after it. */
export function afterWorkingDays(day: number, count: number, works: WorkingDay): number {
  let at = nextWorkingDay(day, works)
  for (let left = count; left > 0; left--) at = nextWorkingDay(at + 1, works)
  return at
}

/** Working days after `from` up to and including `to`. */
export function workingDaysBetween(from: number, to: number, works: WorkingDay): number {
  let count = 0
  for (let day = from + 1; day <= to; day++) if (works(day)) count++
  return count
}

/** The day an order counts for: today before the cut-off on a working day, else the next working day. */
export function orderDay(supplier: Supplier, day: number, minuteOfDay: number): number {
  const works = workingDayOf(supplier)
  const inTime = supplier.cutoffMin === null || minuteOfDay <= supplier.cutoffMin
  return nextWorkingDay(inTime ? day : day + 1, works)
}

/**
 * Chances of a lead of 1, 2, 3 ... working days (index 0 is a lead of 0 and has none): a gamma-shaped spread of the
 * given mean and standard deviation, cut into whole days. Lead times are never negative and lean to the late side, so a
 * normal curve would promise too much.
 */
export function leadChances(lead: LeadTime): Float64Array {
  const { meanDays, sdDays } = lead
  const whole = Math.floor(meanDays)
  if (sdDays < 0.05) {
    const chances = new Float64Array(whole + 2)
    chances[whole] = 1 - (meanDays - whole)
    chances[whole + 1] = meanDays - whole
    return chances
  }
  const most = Math.ceil(meanDays + 6 * sdDays) + 1
  const chances = new Float64Array(most + 1)
  let before = 0
  for (let k = 1; k <= most; k++) {
    const upTo = k === most ? 1 : gammaShare(k + 0.5, meanDays, sdDays)
    chances[k] = Math.max(0, upTo - before)
    before = Math.max(before, upTo)
  }
  return recentred(chances, meanDays)
}

/** Chance that a gamma variable is at most `x`, by the cube-root rule of Wilson and Hilferty (1931). */
function gammaShare(x: number, mean: number, sd: number): number {
  const shape = (mean / sd) ** 2
  return normalShare(3 * Math.sqrt(shape) * (Math.cbrt(x / mean) - 1 + 1 / (9 * shape)))
}

// Cutting into days and the approximation shift the mean a little; a part of every day's chance, moved to its neighbour,
// puts it back. A lead of one day cannot become shorter.
function recentred(chances: Float64Array, mean: number): Float64Array {
  const shift = mean - chances.reduce((sum, chance, k) => sum + k * chance, 0)
  const moved = new Float64Array(chances.length + 1)
  const part = shift >= 0 ? shift : -shift / (1 - chanceOf(chances, 1))
  chances.forEach((chance, k) => {
    const moves = shift < 0 && k === 1 ? 0 : chance * Math.min(1, part)
    addTo(moved, k, chance - moves)
    addTo(moved, shift >= 0 ? k + 1 : Math.max(1, k - 1), moves)
  })
  return moved
}

/** Mean and spread of the working days past deliveries took; null with fewer than three. */
export function leadTimeOf(workingDays: readonly number[]): LeadTime | null {
  if (workingDays.length < 3) return null
  const mean = workingDays.reduce((sum, days) => sum + days, 0) / workingDays.length
  const squares = workingDays.reduce((sum, days) => sum + (days - mean) ** 2, 0)
  return { meanDays: mean, sdDays: Math.sqrt(squares / (workingDays.length - 1)) }
}
