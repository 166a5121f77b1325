/** A proposal beside the present plan, car by car. */

import {
  costOf,
  type FloorObjective,
  type FloorProblem,
  isChanged,
  objectiveOf,
  openTime,
  type Plan,
  partOfWork,
  staysOf,
} from '../schedule/index.ts'
import type { RelayTask } from './relayTask.ts'

/** What a car is now and would be, in minutes and moves. */
interface Weighed {
  readonly lateMin: number
  readonly blockedMin: number
  readonly moves: number
}

export interface CarChange {
  readonly jobId: string
  readonly to: Plan
  /** Null: it has no place yet. */
  readonly from: Plan | null
  readonly was: Weighed | null
  readonly becomes: Weighed
  /** The other changed cars that this one's new place needs out of its way. */
  readonly needs: readonly string[]
}

/** Something taken for a time: a bay, a person, or a thing that goes with the car. */
interface Taken {
  readonly what: string
  readonly from: number
  readonly to: number
}

/** The cars that a plan does not leave as they are, in the order they come; with what each gains and needs. */
export function changesOf({ floor, present }: RelayTask, plan: Readonly<Record<string, Plan>>): CarChange[] {
  const hours = openTime(floor.open)
  const changed = floor.jobs.filter(job => plan[job.id] && differs(present[job.id], plan[job.id]!))
  const weigh = (job: (typeof changed)[number], own: Plan): Weighed => {
    const { handover, blockedOpen, moves } = objectiveOf(hours, job.steps, own)
    return { lateMin: Math.max(0, handover - job.due), blockedMin: blockedOpen, moves }
  }
  const now = new Map(
    changed.flatMap(job =>
      present[job.id] ? [[job.id, takenBy(hours, job, present[job.id]!)] as const] : [],
    ),
  )
  return changed
    .map(job => {
      const to = plan[job.id]!
      const from = present[job.id] ?? null
      const mine = takenBy(hours, job, to)
      return {
        jobId: job.id,
        from,
        to,
        was: from && weigh(job, from),
        becomes: weigh(job, to),
        needs: changed
          .filter(other => other.id !== job.id && clash(mine, now.get(other.id) ?? []))
          .map(other => other.id),
      }
    })
    .sort((a, b) => a.to.steps[0]!.start - b.to.steps[0]!.start || (a.jobId < b.jobId ? -1 : 1))
}

/** The cars chosen, and all whose places they need free: accepted together they are sound. */
export function together(changes: readonly CarChange[], chosen: Iterable<string>): Set<string> {
  const needs = new Map(changes.map(change => [change.jobId, change.needs]))
  const all = new Set<string>()
  const add = (id: string) => {
    if (all.has(id) || !needs.has(id)) return
    all.add(id)
    for (const other of needs.get(id)!) add(other)
  }
  for (const id of chosen) add(id)
  return all
}

/** A car stands elsewhere, or its steps take longer or shorter than they were booked for. */
function differs(present: Plan | undefined, plan: Plan): boolean {
  return isChanged(present, plan) || plan.steps.some(({ end }, i) => end !== present?.steps[i]?.end)
}

/** What the floor costs as it stands: of the cars that have a place, whether it can be kept or not. */
export function presentCost({ floor, present }: RelayTask): FloorObjective {
  return costOf({ ...floor, jobs: floor.jobs.filter(job => present[job.id]) }, present)
}

function takenBy(
  hours: ReturnType<typeof openTime>,
  { steps, things: going = [] }: FloorProblem['jobs'][number],
  plan: Plan,
): Taken[] {
  const bays = staysOf(plan).map(({ bay, from, to }) => ({ what: `bay ${bay}`, from, to }))
  const people = plan.steps.flatMap(({ start, end, crew, help = [] }, i) => {
    const step = steps[i]
    const part = step?.kind === 'work' && step.help ? partOfWork(hours, start, step.help) : null
    return [
      ...crew.map(id => ({ what: `person ${id}`, from: start, to: end })),
      ...help.map(id => ({ what: `person ${id}`, ...(part ?? { from: start, to: end }) })),
    ]
  })
  const things = going.map(id => ({ what: `thing ${id}`, from: plan.steps[0]!.start, to: plan.handover }))
  return [...bays, ...people, ...things]
}

function clash(a: readonly Taken[], b: readonly Taken[]): boolean {
  return a.some(one => b.some(other => one.what === other.what && one.from < other.to && other.from < one.to))
}
