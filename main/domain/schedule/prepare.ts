import { difference, type Span, spanSet } from '../calendar/spans.ts'
import { type OpenTime, openTime } from './openTime.ts'
import type { Problem } from './types.ts'

/** One bay's free spans between what is booked and closed, sorted, as parallel lists. */
export interface FreeBay {
  readonly id: string
  readonly from: readonly number[]
  readonly to: readonly number[]
}

/**
 * A problem prepared for searching: bookings turned into free spans, opening hours collapsed, and minutes counted in
 * grid steps (`k` stands for minute `gridFrom + k * grid`).
 */
export interface Prepared {
  readonly problem: Problem
  readonly grid: number
  readonly gridFrom: number
  readonly hours: OpenTime
  /** Grid points at which a car may come, move or go: inclusive ranges, sorted. */
  readonly doorFrom: readonly number[]
  readonly doorTo: readonly number[]
  readonly bays: readonly FreeBay[]
  /** Opening minutes of each person in which nothing is booked. */
  readonly crewFree: ReadonlyMap<string, readonly Span[]>
}

/** The first grid point at or after minute `t`. */
export function gridCeil(prepared: Prepared, t: number): number {
  return Math.ceil((t - prepared.gridFrom) / prepared.grid)
}

/** The last grid point at or before minute `t`. */
export function gridFloor(prepared: Prepared, t: number): number {
  return Math.floor((t - prepared.gridFrom) / prepared.grid)
}

/** The grid point at or after the minute `t`, as a minute. */
export function gridUp({ grid, gridFrom = 0 }: Pick<Problem, 'grid' | 'gridFrom'>, t: number): number {
  return gridFrom + Math.ceil((t - gridFrom) / grid) * grid
}

/** The minute of grid point `k`. */
export function minuteAt(prepared: Prepared, k: number): number {
  return prepared.gridFrom + k * prepared.grid
}

/** Prepares a problem once; every offer and every relaxed search then reads it. Pure; no bound on the sizes. */
export function prepare(problem: Problem): Prepared {
  const grid = problem.grid
  const gridFrom = problem.gridFrom ?? 0
  // Nothing happens outside [release, horizon]; openings that touch it still lend their door minutes.
  const near = (span: Span) => span.to >= problem.newJob.release && span.from <= problem.horizon
  const open = spanSet(problem.open).filter(near)
  const doorFrom: number[] = []
  const doorTo: number[] = []
  for (const span of open) {
    const from = Math.ceil((span.from - gridFrom) / grid)
    const to = Math.floor((span.to - gridFrom) / grid)
    if (from <= to) {
      doorFrom.push(from)
      doorTo.push(to)
    }
  }
  const taken = new Map<string, Span[]>(problem.bays.map(bay => [bay.id, [...bay.closed]]))
  for (const stay of problem.fixed) taken.get(stay.bay)?.push(stay)
  const whole = [{ from: problem.newJob.release, to: problem.horizon }]
  const bays = problem.bays.map(bay => {
    const free = difference(whole, spanSet(taken.get(bay.id)!))
    return { id: bay.id, from: free.map(span => span.from), to: free.map(span => span.to) }
  })
  const crewFree = new Map(
    problem.crew.map(person => [person.id, difference(open, spanSet(person.away.filter(near)))] as const),
  )
  return { problem, grid, gridFrom, hours: openTime(open), doorFrom, doorTo, bays, crewFree }
}
