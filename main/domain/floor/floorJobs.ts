import type { Span } from '../calendar/index.ts'
import type { LaidCoat, Leaving } from '../cure/index.ts'
import type { JobStatus } from '../job/index.ts'
import {
  type Help,
  openTime,
  type Plan,
  partOfWork,
  type Stay,
  type Step,
  staysOf,
} from '../schedule/index.ts'

/** One step as it is stored: what was planned, what really happened, and what follows from both. */
export interface StepRow {
  readonly position: number
  readonly kind: string
  readonly name: string
  readonly stage: string
  readonly needs: string
  readonly skill: string | null
  readonly crewCount: number
  readonly help?: unknown
  readonly minutes: number
  readonly splittable: boolean
  readonly sameBay: boolean
  readonly waitMin: number | null
  readonly waitMax: number | null
  readonly moveAfterMin: number | null
  readonly productId: string | null
  readonly bayId: string
  readonly plannedAt: number
  readonly plannedEndAt: number
  readonly startAt: number
  readonly endAt: number
  readonly actualStartAt: number | null
  readonly actualEndAt: number | null
  readonly movedToBayId: string | null
  readonly movedAt: number | null
  readonly takesOff?: boolean
}

export interface FloorStep extends StepRow {
  readonly crewIds: readonly string[]
  /** Those of them who are there for its help alone; left out: nobody. */
  readonly helperIds?: readonly string[]
  /** The running clock of a coat that is on the car. */
  readonly laid?: LaidCoat
}

/** A job as far as it holds bays and people. */
export interface FloorJob {
  readonly id: string
  readonly number: number
  readonly status: JobStatus
  readonly plate: string
  readonly promisedAt: number
  readonly plannedHandoverAt: number
  readonly handoverAt: number
  /** Until when it holds its last bay: after the handover where nobody has come for the car. */
  readonly leavesAt: number
  readonly arrivedAt: number | null
  /** Who confirmed that it travels and stands under cover until it may get wet; null: it stays here until then. */
  readonly coveredBy: string | null
  /** When it is fetched as agreed since it was ready; its bay is kept until then. */
  readonly fetchAt?: number | null
  readonly steps: readonly FloorStep[]
  /** What is left of it does not fit before the end of what is looked at: its times are those stored. Left out: it fits. */
  readonly endless?: boolean
}

/** One step of a job that holds a bay now or later, with what its job is, as the database gives it. */
export interface FloorRow extends StepRow, Omit<FloorJob, 'id' | 'leavesAt' | 'steps'> {
  readonly jobId: string
  /** Ids, joined with commas; null for a step that takes nobody. */
  readonly crew: string | null
  /** Of those who only help. */
  readonly helpers: string | null
}

/** The rows of the floor, which come job by job, put together. */
export function floorJobs(rows: readonly FloorRow[]): FloorJob[] {
  const jobs: FloorJob[] = []
  let steps: FloorStep[] = []
  for (const row of rows) {
    if (jobs.at(-1)?.id !== row.jobId) {
      steps = []
      const {
        jobId: id,
        number,
        status,
        plate,
        promisedAt,
        plannedHandoverAt,
        handoverAt,
        arrivedAt,
        coveredBy,
        fetchAt = null,
      } = row
      const times = {
        promisedAt,
        plannedHandoverAt,
        handoverAt,
        leavesAt: handoverAt,
        arrivedAt,
        coveredBy,
        fetchAt,
      }
      jobs.push({ id, number, status, plate, ...times, steps })
    }
    steps.push({ ...row, crewIds: row.crew?.split(',') ?? [], helperIds: row.helpers?.split(',') ?? [] })
  }
  return jobs
}

/** How the job's car may leave. */
export function leavingOf({ coveredBy }: { readonly coveredBy: string | null }): Leaving {
  return coveredBy === null ? 'dry' : 'covered'
}

type Timed = Pick<FloorStep, 'bayId' | 'startAt' | 'endAt' | 'movedToBayId' | 'movedAt'>

/** A step's people as the scheduler names them: those of the whole step, and those who only help. */
export function teamOf({ crewIds = [], helperIds = [] }: Partial<Pick<FloorStep, 'crewIds' | 'helperIds'>>) {
  if (helperIds.length === 0) return { crew: crewIds }
  return { crew: crewIds.filter(id => !helperIds.includes(id)), help: helperIds }
}

/** The same the other way round, as a step keeps them. */
export function peopleOf({ crew, help = [] }: Pick<Plan['steps'][number], 'crew' | 'help'>) {
  return { crewIds: [...crew, ...help], helperIds: help }
}

/** Rows that name a step's people. */
export function crewRows({ crewIds, helperIds = [] }: Pick<FloorStep, 'crewIds' | 'helperIds'>) {
  return crewIds.map(crewId => ({ crewId, helps: helperIds.includes(crewId) }))
}

/** When each of a step's people is there, in its minutes as now projected: all of it, or the part they help with. */
export function presenceOf(
  open: readonly Span[],
  step: FloorStep,
): { readonly id: string; readonly from: number; readonly to: number }[] {
  const { startAt, endAt, crewIds, helperIds = [] } = step
  const help = (step.help ?? null) as Help | null
  const part = help && helperIds.length > 0 ? partOfWork(openTime(open), startAt, help) : null
  return crewIds.map(id =>
    part && helperIds.includes(id) ? { id, ...part } : { id, from: startAt, to: endAt },
  )
}

/** A job's steps as the scheduler's plan, at their projected times. */
export function planOf(job: {
  steps: readonly (Timed & Partial<Pick<FloorStep, 'crewIds' | 'helperIds'>>)[]
  handoverAt: number
}): Plan {
  return {
    steps: job.steps.map(step => ({
      bay: step.bayId,
      start: step.startAt,
      end: step.endAt,
      ...teamOf(step),
      ...(step.movedToBayId !== null &&
        step.movedAt !== null && { moved: { bay: step.movedToBayId, at: step.movedAt } }),
    })),
    handover: job.handoverAt,
  }
}

/** The unbroken times a job's car holds its bays, in order, as projected; none after it has left. */
export function jobStays(job: Parameters<typeof planOf>[0] & { leavesAt: number }): Stay[] {
  return staysOf(planOf({ ...job, handoverAt: job.leavesAt }))
    .map(stay => ({ ...stay, to: Math.min(stay.to, job.leavesAt) }))
    .filter(stay => stay.from < stay.to)
}

/** A stored step as the scheduler reads it. */
export function stepOf(row: StepRow): Step {
  const { minutes, needs, sameBay, waitMin, waitMax } = row
  const base = { minutes, needs, sameBay, waitMin, waitMax }
  return row.kind === 'hold'
    ? { ...base, kind: 'hold', moveAfter: row.moveAfterMin }
    : {
        ...base,
        kind: 'work',
        skill: row.skill,
        crew: row.crewCount,
        split: row.splittable,
        help: (row.help ?? null) as Help | null,
      }
}
