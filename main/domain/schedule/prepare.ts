import { difference, type Span, spanSet } from '../calendar/spans.ts'
import { type OpenTime, openTime } from './openTime.ts'
import type { Bay, Person, Problem } from './types.ts'

/** A bay, with its free spans between what is booked and closed, sorted. */
export interface FreeBay extends Bay {
  readonly free: readonly Span[]
}

/** Somebody, with the opening minutes in which nothing is booked. */
export interface FreePerson extends Person {
  readonly free: readonly Span[]
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
  /** Grid points at which a car may come, move or go: both ends included, sorted. */
  readonly doors: readonly Span[]
  readonly bays: readonly FreeBay[]
  readonly crew: readonly FreePerson[]
}

type Grid = Pick<Problem, 'grid' | 'gridFrom'>

/** The first grid point at or after minute `t`. */
export function gridCeil({ grid, gridFrom = 0 }: Grid, t: number): number {
  return Math.ceil((t - gridFrom) / grid)
}

/** The last grid point at or before minute `t`. */
export function gridFloor({ grid, gridFrom = 0 }: Grid, t: number): number {
  return Math.floor((t - gridFrom) / grid)
}

/** The minute of grid point `k`. */
export function minuteAt({ grid, gridFrom = 0 }: Grid, k: number): number {
  return gridFrom + k * grid
}

/**
 * Prepares a problem once; every offer and every relaxed search then reads it. Pure; no bound on the sizes.
 * @param before another problem of the same grid and release, prepared: what both share, as the same object, is taken over.
 */
export function prepare(problem: Problem, before?: Prepared): Prepared {
  const { grid, gridFrom = 0, open, crew, bays, fixed, horizon } = problem
  const was = before?.problem
  const known = was?.open === open && was.crew === crew && was.horizon === horizon ? before : undefined
  return {
    problem,
    grid,
    gridFrom,
    ...(known ? { hours: known.hours, doors: known.doors, crew: known.crew } : openAndCrew(problem)),
    bays: known && was?.bays === bays && was.fixed === fixed ? known.bays : freeBays(problem),
  }
}

function openAndCrew(problem: Problem): Pick<Prepared, 'hours' | 'doors' | 'crew'> {
  const { newJob, horizon } = problem
  // Nothing happens outside [release, horizon]; openings that touch it still lend their door minutes.
  const near = (span: Span) => span.to >= newJob.release && span.from <= horizon
  const open = spanSet(problem.open).filter(near)
  const doors = open
    .map(({ from, to }) => ({ from: gridCeil(problem, from), to: gridFloor(problem, to) }))
    .filter(({ from, to }) => from <= to)
  const crew = problem.crew.map(person => ({
    ...person,
    free: difference(open, spanSet(person.away.filter(near))),
  }))
  return { hours: openTime(open), doors, crew }
}

function freeBays({ bays, fixed, newJob, horizon }: Problem): FreeBay[] {
  const taken = new Map<string, Span[]>(bays.map(bay => [bay.id, [...bay.closed]]))
  for (const stay of fixed) taken.get(stay.bay)?.push(stay)
  const whole = [{ from: newJob.release, to: horizon }]
  return bays.map(bay => ({ ...bay, free: difference(whole, spanSet(taken.get(bay.id) ?? [])) }))
}
