/** The floor as the scheduler's problem: everything booked is fixed, its people are away. */
import { difference, type Span, spanSet } from '../calendar/index.ts'
import type { NewJob, Person, Problem, Stay } from '../schedule/index.ts'
import { meetsNeeds } from '../shop/index.ts'
import type { Booked, FloorPerson } from './floor.ts'
import { type FloorJob, jobStays, presenceOf } from './floorJobs.ts'

export interface ProblemInput {
  readonly job: NewJob
  /** This job's own stays and people do not stand in its way. */
  readonly exceptJobId?: string
  /** More stays that do. */
  readonly alsoFixed?: readonly Stay[]
  /** All that is booked, for whom it brings here anyway; left out: what stands in the way. */
  readonly booked?: readonly FloorJob[]
}

/** The problem of one job on the floor. Archived bays and people are left out of what it may use. */
export function problemOf(
  floor: Booked,
  { job, exceptJobId, alsoFixed = [], booked = floor.jobs }: ProblemInput,
): Problem {
  const others = floor.jobs.filter(other => other.id !== exceptJobId)
  const busy = busyByPerson(others, floor)
  return {
    grid: floor.gridMin,
    gridFrom: floor.gridFrom,
    horizon: floor.toAt,
    open: floor.open,
    bays: floor.bays
      .filter(bay => !bay.archived)
      .map(({ id, capabilities, offers, closures }) => ({
        id,
        can: canOf([...capabilities, ...offers], job.steps),
        closed: spanSet(closures.map(closure => ({ from: closure.fromAt, to: closure.toAt }))),
      })),
    crew: floor.crew
      .filter(person => !person.archived)
      .map(
        (person): Person => ({
          id: person.id,
          skills: person.skills,
          away: spanSet([
            ...difference(floor.open, person.present),
            ...(busy.get(person.id) ?? []),
            ...tooSoonFor(floor, booked, person),
          ]),
        }),
      ),
    fixed: [
      ...others.flatMap(other => jobStays(other).map(stay => ({ ...stay, job: other.id }))),
      ...alsoFixed,
    ],
    newJob: job,
  }
}

/** What a bay has, and the sets of it that the job's steps ask for as one: the scheduler compares words. */
function canOf(has: readonly string[], steps: NewJob['steps']): string[] {
  const sets = steps.flatMap(({ needs }) => (needs && meetsNeeds(has, needs) ? needs : []))
  return [...new Set([...has, ...sets])]
}

/** When each person works on what is booked, from now on. */
function busyByPerson(jobs: readonly FloorJob[], { open, nowAt }: Booked): Map<string, Span[]> {
  const busy = new Map<string, Span[]>()
  for (const job of jobs)
    for (const step of job.steps) {
      if (step.actualEndAt !== null || step.endAt <= nowAt) continue
      for (const { id, ...span } of presenceOf(open, step)) {
        const spans = busy.get(id)
        if (spans) spans.push(span)
        else busy.set(id, [span])
      }
    }
  return busy
}

const dayMin = 1440

/** The days for which somebody from outside is asked too late by now; on a day they come anyway they need no notice. */
function tooSoonFor(floor: Booked, booked: readonly FloorJob[], { id, noticeDays = 0 }: FloorPerson): Span[] {
  if (noticeDays === 0) return []
  const dayOf = (at: number) => Math.floor((at - floor.gridFrom) / dayMin)
  const comes = new Set(
    booked.flatMap(job =>
      job.steps.flatMap(step =>
        step.crewIds.includes(id) && step.actualEndAt === null
          ? [dayOf(step.startAt), dayOf(step.endAt - 1)]
          : [],
      ),
    ),
  )
  return Array.from({ length: noticeDays }, (_, day) => day)
    .filter(day => !comes.has(day))
    .map(day => ({ from: floor.gridFrom + day * dayMin, to: floor.gridFrom + (day + 1) * dayMin }))
}
