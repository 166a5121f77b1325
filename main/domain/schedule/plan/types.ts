import type { Span } from '../../calendar/spans.ts'
import type { Bay, NewJob, Person, Plan, Problem, Stay, Step } from '../types.ts'

/** One car of the floor to be laid. */
export interface FloorJob {
  readonly id: string
  /** No start before it. */
  readonly release: number
  /** The handover promised, and what a minute after it counts. */
  readonly due: number
  readonly weight: number
  readonly steps: readonly Step[]
  /**
   * What goes with it from its drop-off to its handover, and with one job at a time: what the shop lends, and the car
   * itself where it is booked more than once. Left out: nothing.
   */
  readonly things?: readonly string[] | undefined
}

/** A thing that goes with a job which is not laid. */
export interface Lent extends Span {
  readonly thing: string
}

/** Everything that may be laid anew; what is fixed stands in `fixed` and in the people's `away`. */
export interface FloorProblem extends Omit<Problem, 'newJob'> {
  readonly bays: readonly Bay[]
  readonly crew: readonly Person[]
  readonly fixed: readonly Stay[]
  readonly jobs: readonly FloorJob[]
  readonly lent?: readonly Lent[] | undefined
}

/** A plan for each job, by its id. */
export type FloorPlan = Readonly<Record<string, Plan>>

/** What a floor costs, the first first. */
export interface FloorObjective {
  /** Minutes late times weight. */
  readonly weightedTardiness: number
  readonly blockedOpen: number
  readonly moves: number
  /** Cars that do not stay as they are; only where a present plan was given. */
  readonly changes?: number
}

/** One job of the floor as the promise reads it, among `fixed` and `crew`. */
export function asProblem(floor: FloorProblem, job: FloorJob): Problem {
  const newJob: NewJob = { id: job.id, release: job.release, asked: job.release, steps: job.steps }
  return { ...floor, newJob }
}

/**
 * When a machine is free again: `classic` as the operation on it ends; `noWait` too, and the next operation begins at
 * that minute; `blockingSwap` when the job's next operation starts; `blockingNoSwap` and jobs never change places.
 */
export type Variant = 'classic' | 'noWait' | 'blockingSwap' | 'blockingNoSwap'

export const variants: readonly Variant[] = ['classic', 'noWait', 'blockingSwap', 'blockingNoSwap']

/** A job shop: for each job its operations in order, each a machine and its minutes. */
export type JobShop = readonly (readonly (readonly [machine: number, minutes: number])[])[]

/** The start of each operation of each job. */
export type ShopStarts = readonly (readonly number[])[]
