import { clip, difference, minutesIn, type Span, spanSet } from '../calendar/spans.ts'
import { checkBays } from './checkBays.ts'
import { checkWait } from './checkPlan.ts'
import {
  endOfWork,
  isDoorOpen,
  nextDoor,
  type OpenTime,
  openBetween,
  openTime,
  partOfWork,
} from './openTime.ts'
import { gridCeil, minuteAt } from './prepare.ts'
import type { Violation } from './reasons.ts'
import { helpOf } from './steps.ts'
import type { Plan, PlannedStep, Problem, Step, Work } from './types.ts'

/** When a step really began and ended, to the minute; absent or null: not yet. Need not be on the grid. */
export interface Actual {
  readonly start?: number | null | undefined
  readonly end?: number | null | undefined
}

export interface ProjectedStep extends PlannedStep {
  readonly state: 'done' | 'running' | 'planned'
  /** Minutes its end moved against the plan; negative where it is early. */
  readonly shift: number
}

export interface Projection {
  /** The steps as far as they can be projected; shorter than the chain where the horizon does not hold them. */
  readonly steps: readonly ProjectedStep[]
  /** The planned handover where it still holds, else the first one possible; null where the horizon has none. */
  readonly handover: number | null
  /** Minutes past the promised handover; 0 where the promise holds, null where there is no handover. */
  readonly slip: number | null
  /** Waits that broke or will break (a missed recoat window), and bays the later stays would run into. */
  readonly broken: readonly Violation[]
}

/** What really happened by the minute `now`; `promised` is the planned handover unless another was given. */
export interface Happened {
  readonly actuals: readonly Actual[]
  readonly now: number
  readonly promised?: number
}

/** The shop and the present, as every step of a projection reads them. */
interface Present {
  readonly problem: Problem
  readonly hours: OpenTime
  readonly now: number
}

/** One step on its way from the plan to the projection. */
interface Turn {
  readonly step: Step
  readonly planned: PlannedStep
  /** It was planned to begin the minute the step before ends. */
  readonly follows: boolean
  readonly before: ProjectedStep | undefined
  readonly actual: Actual | undefined
}

/**
 * A job re-projected from what really happened. Steps not yet begun keep their planned start unless something pushes
 * them: the real end of the step before, a least wait, the hours, other work of their people, or `now` having passed
 * it. A hold that was planned straight after a step runs from that step's real end, early or late. Begun work is
 * taken to be finished without a pause unless it may split, and to run on while it is overdue. Work that the next may
 * not wait long for waits itself until both can be done: nobody wipes a car in the evening that is coated in the
 * morning. Nothing here moves a car to another bay: a stay that now runs into a booking is reported instead.
 *
 * `problem.newJob` is the job; `fixed` and `away` are everybody else's. Minutes throughout.
 */
export function project(problem: Problem, plan: Plan, { actuals, now, promised }: Happened): Projection {
  const present: Present = { problem, hours: openTime(problem.open), now }
  const steps: ProjectedStep[] = []
  const broken: Violation[] = []
  const beyond = (to: number, step?: number): Projection => {
    const { horizon } = problem
    const at = step === undefined ? {} : { step }
    broken.push({ code: 'beyondHorizon', ...at, from: horizon, to, limit: horizon })
    return { steps, handover: null, slip: null, broken }
  }
  for (const [i, step] of problem.newJob.steps.entries()) {
    const planned = plan.steps[i]!
    const before = steps.at(-1)
    const follows = plan.steps[i - 1]?.end === planned.start
    const turn: Turn = { step, planned, follows, before, actual: actuals[i] }
    const after = plan.steps[i + 1] && {
      step: problem.newJob.steps[i + 1]!,
      planned: plan.steps[i + 1]!,
      follows: false,
      actual: actuals[i + 1],
    }
    const next = heldBack(present, turn, after)
    if (!next) return beyond(planned.end, i)
    if (before) broken.push(...checkWait(step, before, next, i))
    steps.push(next)
  }
  const end = steps.at(-1)!.end
  const handover = handoverAfter(present, end, plan.handover)
  if (handover === undefined) return beyond(end)
  const inBays = checkBays(problem, { steps, handover })
  broken.push(...inBays.filter(({ code }) => code === 'bayTaken' || code === 'bayClosed'))
  return { steps, handover, slip: Math.max(0, handover - (promised ?? plan.handover)), broken }
}

/** How often work is held back for the work after it, each time to a later opening; then its wait is told as broken. */
const mostHeldBack = 60

/** A step at its time, later where the work after it would else come too late. */
function heldBack(present: Present, turn: Turn, after: Omit<Turn, 'before'> | undefined) {
  const asSoon = projectStep(present, turn)
  const most = after?.step.waitMax ?? null
  if (!after || most === null || turn.step.kind === 'hold' || after.step.kind === 'hold') return asSoon
  if (turn.actual?.start != null || after.actual?.start != null) return asSoon
  let now = asSoon
  for (let tries = 0; now && tries < mostHeldBack; tries++) {
    const next = projectStep(present, { ...after, before: now })
    if (!next) return asSoon
    if (next.start - now.end <= most) return now
    const start = Math.max(now.start + 1, next.start - most - turn.step.minutes)
    now = projectStep(present, { ...turn, planned: { ...turn.planned, start } })
  }
  return asSoon
}

function projectStep(present: Present, turn: Turn): ProjectedStep | undefined {
  const { problem, hours, now } = present
  const { step, planned, actual } = turn
  const begun = actual?.start ?? undefined
  const start = begun ?? startOf(present, turn)
  if (start === undefined) return undefined
  const ended = actual?.end ?? undefined
  const end = ended ?? endOf(hours, step, start, begun === undefined ? start : now)
  if (ended === undefined && end > problem.horizon) return undefined
  const { moved, ...still } = planned
  const at = moved && moveOf(hours, step, moved.at, { start, end })
  return {
    ...still,
    ...(moved && at !== undefined && { moved: { at, bay: moved.bay } }),
    start,
    end,
    state:
      ended !== undefined ? 'done' : begun !== undefined ? 'running' : stateOf(turn, { start, end }, now),
    shift: end - planned.end,
  }
}

interface Stretch {
  readonly start: number
  readonly end: number
}

/** A hold needs nobody to begin it: once the step before is done, the clock alone says how far it is. */
function stateOf({ step, before }: Turn, { start, end }: Stretch, now: number): ProjectedStep['state'] {
  if (step.kind === 'work' || before?.state !== 'done' || now < start) return 'planned'
  return now < end ? 'running' : 'done'
}

/** The start of a step not yet begun, or undefined where the horizon does not hold it. */
function startOf(present: Present, { step, planned, follows, before }: Turn): number | undefined {
  const { problem, hours, now } = present
  const ready = before ? before.end + (step.waitMin ?? 0) : planned.start
  const earliest = Math.max(planned.start, ready, now)
  if (step.kind === 'hold') {
    const sameBay = !before || (before.moved?.bay ?? before.bay) === planned.bay
    if (!sameBay) return nextDoor(hours, earliest)
    return follows ? ready : earliest
  }
  const awayOf = (ids: readonly string[] = []) =>
    spanSet(problem.crew.filter(person => ids.includes(person.id)).flatMap(person => person.away))
  const free = difference(spanSet(problem.open), awayOf(planned.crew))
  const helpAway = awayOf(planned.help)
  let start = firstStart(present, step, free, earliest)
  for (;;) {
    const later = start === undefined ? undefined : startForHelp(hours, step, start, helpAway)
    if (start === undefined || later === undefined) return start
    start = firstStart(present, step, free, later)
  }
}

/** A later start to try, where those who help are `away` in their part of the step; undefined: they are there. */
function startForHelp(hours: OpenTime, step: Work, start: number, away: readonly Span[]): number | undefined {
  const help = helpOf(step)
  if (!help) return undefined
  const part = partOfWork(hours, start, help)
  const missing = clip(away, part.from, part.to).findLast(({ from, to }) => openBetween(hours, from, to) > 0)
  // Their part begins as much later as lies between its start and the end of the absence, in opening minutes.
  return missing && endOfWork(hours, start, openBetween(hours, part.from, missing.to) + 1) - 1
}

/** The first minute from `earliest` at which the team, with these `free` spans, can do the whole step. */
function firstStart(
  { problem, hours }: Present,
  step: Work,
  free: readonly Span[],
  earliest: number,
): number | undefined {
  for (const span of free) {
    const start = Math.max(span.from, earliest)
    if (start >= span.to) continue
    const end = step.split ? endOfWork(hours, start, step.minutes) : start + step.minutes
    if (end > problem.horizon) return undefined
    if (minutesIn(clip(free, start, end)) === step.minutes) return start
  }
  return undefined
}

function endOf(hours: OpenTime, step: Step, start: number, notBefore: number): number {
  if (step.kind === 'hold') return start + step.minutes
  const end =
    step.split && isDoorOpen(hours, start) ? endOfWork(hours, start, step.minutes) : start + step.minutes
  return Math.max(end, notBefore)
}

/** The planned move inside a hold, pushed to when the car may be moved; undefined where the hold is over first. */
function moveOf(hours: OpenTime, step: Step, planned: number, hold: Stretch): number | undefined {
  const tackFree = hold.start + ((step.kind === 'hold' ? step.moveAfter : undefined) ?? 0)
  const at = nextDoor(hours, Math.max(planned, tackFree))
  return at === undefined || at >= hold.end ? undefined : at
}

/** The first grid point with open doors after the end, not before the planned handover. */
function handoverAfter({ problem, hours }: Present, end: number, planned: number): number | undefined {
  let at = Math.max(planned, minuteAt(problem, gridCeil(problem, end)))
  while (at <= problem.horizon) {
    const door = nextDoor(hours, at)
    if (door === undefined || door === at) return door
    at = minuteAt(problem, gridCeil(problem, door))
  }
  return undefined
}
