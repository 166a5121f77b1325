import { difference, type Span, spanSet } from '../calendar/spans.ts'
import { checkBays } from './checkBays.ts'
import { endOfWork, firstAtLeast, isDoorOpen, type OpenTime, openTime } from './openTime.ts'
import type { Violation } from './reasons.ts'
import type { Case, Plan, PlannedStep, Step } from './types.ts'

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

/**
 * A job re-projected from what really happened. Steps not yet begun keep their planned start unless something pushes
 * them: the real end of the step before, a least wait, the hours, other work of their people, or `now` having passed
 * it. A hold that was planned straight after a step runs from that step's real end, early or late. Begun work is
 * taken to be finished without a pause unless it may split, and to run on while it is overdue. Nothing here moves a
 * car to another bay: a stay that now runs into a booking is reported instead.
 *
 * `kase.newJob` is the job; `fixed` and `away` are everybody else's. Minutes throughout.
 */
export function project(
  kase: Case,
  plan: Plan,
  actuals: readonly Actual[],
  now: number,
  promised = plan.handover,
): Projection {
  const hours = openTime(kase.open)
  const steps: ProjectedStep[] = []
  const broken: Violation[] = []
  for (const [i, step] of kase.newJob.steps.entries()) {
    const planned = plan.steps[i]!
    const before = steps.at(-1)
    const next = projectStep(kase, hours, step, planned, plan.steps[i - 1], before, actuals[i], now)
    if (!next) {
      broken.push({
        code: 'beyondHorizon',
        step: i,
        from: kase.horizon,
        to: planned.end,
        limit: kase.horizon,
      })
      return { steps, handover: null, slip: null, broken }
    }
    if (before) broken.push(...brokenWait(step, i, before.end, next.start))
    steps.push(next)
  }
  const handover = handoverAfter(kase, hours, steps.at(-1)!.end, plan.handover)
  if (handover === undefined) {
    broken.push({ code: 'beyondHorizon', from: kase.horizon, to: steps.at(-1)!.end, limit: kase.horizon })
    return { steps, handover: null, slip: null, broken }
  }
  broken.push(
    ...checkBays(kase, { steps, handover }).filter(
      one => one.code === 'bayTaken' || one.code === 'bayClosed',
    ),
  )
  return { steps, handover, slip: Math.max(0, handover - promised), broken }
}

function projectStep(
  kase: Case,
  hours: OpenTime,
  step: Step,
  planned: PlannedStep,
  plannedBefore: PlannedStep | undefined,
  before: ProjectedStep | undefined,
  actual: Actual | undefined,
  now: number,
): ProjectedStep | undefined {
  const begun = actual?.start ?? undefined
  const start = begun ?? startAfter(kase, hours, step, planned, plannedBefore, before, now)
  if (start === undefined) return undefined
  const ended = actual?.end ?? undefined
  const end = ended ?? endAfter(hours, step, start, begun === undefined ? start : now)
  if (ended === undefined && end > kase.horizon) return undefined
  const { moved, ...still } = planned
  const at = moved && moveAfter(hours, step, moved.at, start, end)
  return {
    ...still,
    ...(moved && at !== undefined && { moved: { at, bay: moved.bay } }),
    start,
    end,
    state:
      ended !== undefined ? 'done' : begun !== undefined ? 'running' : stateOf(step, start, end, before, now),
    shift: end - planned.end,
  }
}

/** A hold needs nobody to begin it: once the step before is done, the clock alone says how far it is. */
function stateOf(
  step: Step,
  start: number,
  end: number,
  before: ProjectedStep | undefined,
  now: number,
): ProjectedStep['state'] {
  if (step.kind === 'work' || before?.state !== 'done' || now < start) return 'planned'
  return now < end ? 'running' : 'done'
}

/** The start of a step not yet begun, or undefined where the horizon does not hold it. */
function startAfter(
  kase: Case,
  hours: OpenTime,
  step: Step,
  planned: PlannedStep,
  plannedBefore: PlannedStep | undefined,
  before: ProjectedStep | undefined,
  now: number,
): number | undefined {
  const ready = before ? before.end + (step.waitMin ?? 0) : planned.start
  const follows = plannedBefore !== undefined && plannedBefore.end === planned.start
  const sameBay = !before || (before.moved?.bay ?? before.bay) === planned.bay
  if (step.kind === 'hold') {
    if (follows && sameBay) return ready
    const earliest = Math.max(planned.start, ready, now)
    return sameBay ? earliest : nextDoor(hours, earliest)
  }
  const earliest = Math.max(planned.start, ready, now)
  const busy = kase.crew.filter(person => planned.crew.includes(person.id)).flatMap(person => person.away)
  return firstStart(kase, hours, step, difference(spanSet(kase.open), spanSet(busy)), earliest)
}

/** The first minute from `earliest` at which the team can do the whole step. */
function firstStart(
  kase: Case,
  hours: OpenTime,
  step: Step & { kind: 'work' },
  free: readonly Span[],
  earliest: number,
): number | undefined {
  for (const span of free) {
    const start = Math.max(span.from, earliest)
    if (start >= span.to) continue
    const end = step.split ? endOfWork(hours, start, step.minutes) : start + step.minutes
    if (end > kase.horizon) return undefined
    const freeMinutes = free.reduce(
      (sum, one) => sum + Math.max(0, Math.min(one.to, end) - Math.max(one.from, start)),
      0,
    )
    if (freeMinutes === step.minutes) return start
  }
  return undefined
}

function endAfter(hours: OpenTime, step: Step, start: number, notBefore: number): number {
  if (step.kind === 'hold') return start + step.minutes
  const end =
    step.split && isDoorOpen(hours, start) ? endOfWork(hours, start, step.minutes) : start + step.minutes
  return Math.max(end, notBefore)
}

/** The planned move inside a hold, pushed to when the car may be moved; undefined where the hold is over first. */
function moveAfter(
  hours: OpenTime,
  step: Step,
  planned: number,
  start: number,
  end: number,
): number | undefined {
  const tackFree = start + ((step.kind === 'hold' ? step.moveAfter : undefined) ?? 0)
  const at = nextDoor(hours, Math.max(planned, tackFree))
  return at === undefined || at >= end ? undefined : at
}

function nextDoor(hours: OpenTime, t: number): number | undefined {
  return isDoorOpen(hours, t) ? t : hours.from[firstAtLeast(hours.from, t)]
}

/** The first grid point with open doors after the end, not before the planned handover. */
function handoverAfter(kase: Case, hours: OpenTime, end: number, planned: number): number | undefined {
  const origin = kase.gridFrom ?? 0
  let at = Math.max(planned, origin + Math.ceil((end - origin) / kase.grid) * kase.grid)
  while (at <= kase.horizon) {
    const door = nextDoor(hours, at)
    if (door === undefined) return undefined
    if (door === at) return at
    at = origin + Math.ceil((door - origin) / kase.grid) * kase.grid
  }
  return undefined
}

function brokenWait(step: Step, i: number, ended: number, start: number): Violation[] {
  const wait = start - ended
  const range = { step: i, from: ended, to: start }
  if (wait < (step.waitMin ?? 0)) return [{ ...range, code: 'waitTooShort', minutes: step.waitMin ?? 0 }]
  if (step.waitMax != null && wait > step.waitMax)
    return [{ ...range, code: 'waitTooLong', minutes: step.waitMax }]
  return []
}
