/** One stay of a job dragged elsewhere: what the scheduler makes of it. */

import { difference, gridUp, minuteWords, type Span } from '../../domain/calendar/index.ts'
import { clockedSteps, leavingOf, problemOf, stepOf, teamOf, wordsFor } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import {
  checkPlan,
  explain,
  type Offer,
  type Plan,
  type Problem,
  promiseOf,
  type Reason,
  reasonText,
  type Step,
  type ViolationCode,
} from '../../domain/schedule/index.ts'
import { sentence } from '../../domain/words.ts'
import type { Floor } from './floor.ts'
import type { JobRow } from './jobRows.ts'
import { type OtherVisit, visitInTheWay } from './vehicleFree.ts'

/** Where the dragged stay's first step is wished to be. */
export interface Place {
  readonly bayId: string
  readonly startAt: number
}

/** The part of a job that is laid again, and what the part before it leaves open. */
export interface RestOfJob {
  readonly floor: Floor
  readonly job: JobRow
  /** The place of the dragged step among the job's steps. */
  readonly index: number
  /** The dragged step may start in `[earliestAt, latestAt]`, as far as the steps before it go. */
  readonly earliestAt: number
  readonly latestAt: number | null
  /** Why not later, in words. */
  readonly latestWords: string
  /** The only bays the dragged step may use; null: any. */
  readonly bays: readonly string[] | null
  /** What else its car is here for. */
  readonly visits: readonly OtherVisit[]
}

/** Looks at what comes before the dragged stay: it stays as it is, and its car waits where it stands. */
export function restOfJob(
  floor: Floor,
  job: JobRow,
  index: number,
  visits: readonly OtherVisit[],
): RestOfJob {
  const now = gridUp(floor, floor.nowAt)
  const before = job.steps[index - 1]
  const step = clockedSteps(job.steps, leavingOf(job))[index]!
  const rest = { floor, job, index, visits }
  if (!before) return { ...rest, earliestAt: now, latestAt: null, latestWords: '', bays: null }
  const stood = before.movedToBayId ?? before.bayId
  const window = step.waitMax === null ? null : before.endAt + step.waitMax
  const taken = nextUse(floor, job, stood, before.endAt)
  const limits = [
    ...(window === null
      ? []
      : [
          {
            at: window,
            words: say('"{name}" must start by {floor}, after "{name2}"', {
              name: step.name,
              floor: when(floor, window),
              name2: before.name,
            }),
          },
        ]),
    ...(taken === null ? [] : [taken]),
  ].sort((a, b) => a.at - b.at)
  return {
    ...rest,
    earliestAt: Math.max(now, gridUp(floor, before.endAt + (step.waitMin ?? 0))),
    latestAt: limits[0]?.at ?? null,
    latestWords: limits[0]?.words ?? '',
    bays: step.sameBay ? [stood] : null,
  }
}

function when(floor: Floor, at: number): string {
  return minuteWords(at, floor.zone, floor.nowAt)
}

/** The times in which the whole job may lie: those in which its car is not here for another. */
export function timesBetweenVisits({ job, index, visits }: RestOfJob): Span[] {
  const free = difference(
    [{ from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }],
    visits.map(({ dropOffAt, handoverAt }) => ({ from: dropOffAt, to: handoverAt })),
  )
  return index === 0 ? free : free.filter(({ from, to }) => from <= job.dropOffAt && job.dropOffAt < to)
}

/** When the bay in which the car waits is wanted by somebody else, or closed. */
function nextUse(
  floor: Floor,
  job: JobRow,
  bayId: string,
  fromAt: number,
): { at: number; words: string } | null {
  const problem = problemOf(floor, {
    exceptJobId: job.id,
    job: { id: job.id, release: 0, asked: 0, steps: [] },
  })
  const name = floor.bayNames.get(bayId) ?? ''
  const uses = [
    ...problem.fixed
      .filter(stay => stay.bay === bayId && stay.to > fromAt)
      .map(stay => ({
        at: stay.from,
        by: floor.jobNames.get(stay.job ?? '') ?? say('another job'),
      })),
    ...(problem.bays.find(bay => bay.id === bayId)?.closed ?? [])
      .filter(span => span.to > fromAt)
      .map(span => ({ at: span.from, by: null })),
  ].sort((a, b) => a.at - b.at)
  const next = uses[0]
  if (!next) return null
  const at = Math.max(next.at, fromAt)
  const { by } = next
  const from = when(floor, at)
  return {
    at,
    words:
      by === null
        ? say('{name}, where the car waits, is closed from {from}', { name, from })
        : say('{name}, where the car waits, is taken by {by} from {from}', { name, by, from }),
  }
}

/** The problem of the rest of the job, its first step kept to the bays and the starts given. */
export function moveProblem(
  { floor, job, index }: Pick<RestOfJob, 'floor' | 'job' | 'index'>,
  limits: { bays: readonly string[] | null; from: number; to: number | null; horizon?: number },
): Problem {
  const ahead = clockedSteps(job.steps, leavingOf(job)).slice(index)
  const steps = ahead.map((row, i): Step => {
    const step = stepOf(row)
    // Those of the whole step first, so that who helps goes on helping.
    const own = teamOf(row)
    const liked = {
      ...step,
      preferBays: [row.bayId],
      ...(step.kind === 'work' && { preferCrew: [...own.crew, ...(own.help ?? [])] }),
    }
    if (i > 0) return liked
    const bays = limits.bays ?? undefined
    return {
      ...liked,
      waitMin: null,
      waitMax: null,
      sameBay: false,
      bays,
      startFrom: limits.from,
      startTo: limits.to,
    }
  })
  const problem = problemOf(floor, {
    exceptJobId: job.id,
    job: { id: job.id, release: limits.from, asked: limits.from, steps },
  })
  return limits.horizon === undefined
    ? problem
    : { ...problem, horizon: Math.min(problem.horizon, limits.horizon) }
}

export type MovePlan = { ok: true; offer: Offer } | { ok: false; reasons: string[] }

/**
 * Lays the rest of the job with its first step pinned to a place, the later ones where they get the car home soonest,
 * in their own bays and with their own people where nothing is lost by it. Refused with reasons in words.
 */
export function planMove(rest: RestOfJob, wish: Place): MovePlan {
  const { floor, job, index, earliestAt, latestAt, visits } = rest
  const step = job.steps[index]!
  const refuse = (words: string): MovePlan => ({ ok: false, reasons: [sentence(words)] })
  if (wish.startAt < earliestAt)
    return refuse(
      index === 0 || earliestAt === gridUp(floor, floor.nowAt)
        ? say('{floor} is over; it may start from {floor2}', {
            floor: when(floor, wish.startAt),
            floor2: when(floor, earliestAt),
          })
        : say('"{name}" may start from {floor}, after "{name2}"', {
            name: step.name,
            floor: when(floor, earliestAt),
            name2: job.steps[index - 1]!.name,
          }),
    )
  if (latestAt !== null && wish.startAt > latestAt) return refuse(rest.latestWords)
  if (rest.bays && !rest.bays.includes(wish.bayId))
    return refuse(
      say('"{name}" must stay in {bayNames}: the coat is not tack-free', {
        name: step.name,
        bayNames: floor.bayNames.get(rest.bays[0]!),
      }),
    )
  const problem = moveProblem(rest, { bays: [wish.bayId], from: wish.startAt, to: wish.startAt })
  const offer = promiseOf(problem, 'soonest')
  if (offer.feasible) {
    const dropOffAt = index === 0 ? offer.dropOff : job.dropOffAt
    const elsewhere = visitInTheWay(floor, visits, { dropOffAt, handoverAt: offer.handover })
    return elsewhere === null ? { ok: true, offer } : refuse(elsewhere)
  }
  const words = wordsFor(
    floor,
    job.steps.slice(index).map(each => each.name),
  )
  const place = placeViolations(problem, wish, teamOf(step))
  // What is wrong with the place itself says more than what a search without it would find.
  const reasons: Reason[] =
    place.length > 0 ? place : explain(problem, offer).filter(({ code }) => code !== 'pinned')
  return {
    ok: false,
    reasons: [...new Set(reasons.map(reason => sentence(reasonText(reason, words))))].slice(0, 3),
  }
}

const aboutPlace: ReadonlySet<ViolationCode> = new Set([
  'offGrid',
  'closedHours',
  'doorsClosed',
  'unknownBay',
  'unfitBay',
  'bayTaken',
  'bayClosed',
])

/** What is wrong with the place itself, whatever comes after: the bay, the hours, the doors. */
function placeViolations(
  problem: Problem,
  { bayId, startAt }: Place,
  team: ReturnType<typeof teamOf>,
): Reason[] {
  const step = problem.newJob.steps[0]!
  const endAt = startAt + step.minutes
  const plan: Plan = { steps: [{ bay: bayId, start: startAt, end: endAt, ...team }], handover: endAt }
  const alone = { ...problem, newJob: { ...problem.newJob, steps: [step] } }
  return checkPlan(alone, plan).filter(
    ({ code, from, step: at }) =>
      aboutPlace.has(code) && (code !== 'doorsClosed' || (at === 0 && from === startAt)),
  )
}
