import { difference, type Span, spanSet } from '../../calendar/spans.ts'
import type { Plan } from '../types.ts'
import type { Windows } from '../within.ts'
import type { FloorJob, FloorProblem, Lent } from './types.ts'

const always: Span = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }

/** When some of a job's things go with jobs that are not laid; in order, apart. */
export function lentSpans({ lent = [] }: FloorProblem, { things = [] }: FloorJob): Span[] {
  return spanSet(lent.filter(({ thing }) => things.includes(thing)).map(({ from, to }) => ({ from, to })))
}

/** The times in which all things of a job are free; null: always. */
export function windowsOf(floor: FloorProblem, job: FloorJob): Windows {
  const taken = lentSpans(floor, job)
  return taken.length > 0 ? difference([always], taken) : null
}

/** A job's things, as they are lent by its plan. */
export function lentBy({ things = [] }: FloorJob, plan: Plan): Lent[] {
  return things.map(thing => ({ thing, from: plan.steps[0]!.start, to: plan.handover }))
}

/** Whether all things of a job are free from its drop-off to its handover. */
export function areFree(floor: FloorProblem, job: FloorJob, plan: Plan): boolean {
  const taken = lentSpans(floor, job)
  return lentBy(job, plan).every(own => taken.every(({ from, to }) => own.to <= from || to <= own.from))
}
