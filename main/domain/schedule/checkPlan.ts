import { checkBays } from './checkBays.ts'
import { checkTeam, type StepAt } from './checkTeam.ts'
import { endOfWork, isDoorOpen, type OpenTime, openingAt, openTime } from './openTime.ts'
import type { Violation } from './reasons.ts'
import { stepAt } from './steps.ts'
import type { Plan, PlannedStep, Problem, Step } from './types.ts'

/**
 * Every rule the plan breaks, in step order; empty for a sound plan. Written for any plan, a dragged one as well as
 * one of the engine's own: services assert it before they save, the board shows it while a stay is dragged. Minutes
 * throughout. The problem must be sound; the plan may be anything of its shape.
 */
export function checkPlan(problem: Problem, plan: Plan): Violation[] {
  const { steps } = problem.newJob
  if (plan.steps.length !== steps.length)
    return [{ code: 'stepCount', minutes: steps.length, limit: plan.steps.length }]
  const hours = openTime(problem.open)
  const found: Violation[] = []
  plan.steps.forEach((placed, i) => {
    const step = stepAt(problem, i)
    const before = plan.steps[i - 1]
    const at: StepAt = { problem, hours, step, placed, index: i }
    found.push(...checkTimes(at))
    if (before) found.push(...checkWait(step, before, placed, i))
    found.push(...checkTeam(at))
    if (placed.moved) found.push(...checkHoldMove(at, placed.moved))
  })
  found.push(...checkDoors(problem, hours, plan), ...checkBays(problem, plan))
  return found
}

function onGrid(problem: Problem, t: number): boolean {
  return Number.isInteger((t - (problem.gridFrom ?? 0)) / problem.grid)
}

function checkTimes({ problem, hours, step, placed, index: i }: StepAt): Violation[] {
  const found: Violation[] = []
  const { start, end } = placed
  const range = { step: i, from: start, to: end }
  if (!onGrid(problem, start)) found.push({ ...range, code: 'offGrid', limit: problem.grid })
  if (i === 0 && start < problem.newJob.release)
    found.push({ ...range, code: 'beforeRelease', limit: problem.newJob.release })
  if (start < (step.startFrom ?? start) || start > (step.startTo ?? start))
    found.push({ code: 'outsidePin', step: i, from: step.startFrom ?? start, to: step.startTo ?? start })
  const due =
    step.kind === 'work' && step.split ? endOfWork(hours, start, step.minutes) : start + step.minutes
  if (step.kind === 'work') {
    const opening = openingAt(hours, start)
    const fits = opening && (step.split ? due < Number.POSITIVE_INFINITY : due <= opening.to)
    if (!fits) {
      found.push({ ...range, code: 'closedHours', minutes: step.minutes })
      return found
    }
  }
  if (end !== due) found.push({ ...range, code: 'wrongEnd', minutes: step.minutes, limit: due })
  return found
}

/** A wait between two steps that is too short or too long. */
export function checkWait(
  step: Step,
  before: { readonly end: number },
  placed: { readonly start: number },
  i: number,
): Violation[] {
  const wait = placed.start - before.end
  const range = { step: i, from: before.end, to: placed.start }
  if (wait < (step.waitMin ?? 0)) return [{ ...range, code: 'waitTooShort', minutes: step.waitMin ?? 0 }]
  if (step.waitMax != null && wait > step.waitMax)
    return [{ ...range, code: 'waitTooLong', minutes: step.waitMax }]
  return []
}

function checkHoldMove(
  { problem, hours, step, placed, index: i }: StepAt,
  { at, bay }: NonNullable<PlannedStep['moved']>,
): Violation[] {
  const after = step.kind === 'hold' ? step.moveAfter : undefined
  const range = { step: i, bay, from: placed.start, to: at }
  const found: Violation[] = []
  if (after == null || at < placed.start + after || at >= placed.end || bay === placed.bay)
    found.push({ ...range, code: 'movedInHold', ...(after != null && { minutes: after }) })
  if (!onGrid(problem, at)) found.push({ ...range, code: 'offGrid', limit: problem.grid })
  if (!isDoorOpen(hours, at)) found.push({ step: i, code: 'doorsClosed', from: at, to: at })
  return found
}

/** Drop-off, moves between steps, and handover. */
function checkDoors(problem: Problem, hours: OpenTime, plan: Plan): Violation[] {
  const found: Violation[] = []
  const door = (at: number, step?: number) => {
    if (isDoorOpen(hours, at)) return
    found.push({ code: 'doorsClosed', from: at, to: at, ...(step !== undefined && { step }) })
  }
  plan.steps.forEach((placed, i) => {
    const before = plan.steps[i - 1]
    if (!before || (before.moved?.bay ?? before.bay) !== placed.bay) door(placed.start, i)
  })
  const { handover } = plan
  const end = plan.steps.at(-1)?.end ?? handover
  if (handover < end) found.push({ code: 'earlyHandover', from: handover, to: end })
  if (!onGrid(problem, handover))
    found.push({ code: 'offGrid', from: handover, to: handover, limit: problem.grid })
  if (handover > problem.horizon)
    found.push({ code: 'beyondHorizon', from: problem.horizon, to: handover, limit: problem.horizon })
  door(handover)
  return found
}
