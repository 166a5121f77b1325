import { type FloorStep, takenFor } from '../../domain/floor/index.ts'
import { lastActual, lastRecorded, notYet } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkCoat, keepCheck, measuredIn, reasonedCheck } from '../cure/coatCheck.ts'
import type { Desk } from '../desk/desk.ts'
import { assertPaintAllows } from '../intake/paintAllows.ts'
import { drawForStep } from '../shelf/confirmDraws.ts'
import { plannedDraws } from '../shelf/stepsToConfirm.ts'
import { assertCan } from './assertCan.ts'
import { openChecks } from './checks.ts'
import type { FinishStepInput, StartStepInput, TakeBackInput, TimedAct } from './inputs.ts'
import { changeJob, type JobNow } from './jobChange.ts'
import { missedIn } from './missedWork.ts'
import { unansweredSpot } from './testSpotView.ts'

/** The car is here. */
export function arrive(desk: Desk, { id, version, at = desk.now() }: TimedAct): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, now => {
    assertCan(now.row, 'arrive')
    checkMoment(now, at, null)
    return {
      data: { status: 'inShop', arrivedAt: at },
      act: 'arrived',
      detail: { at, dueAt: now.row.dropOffAt },
    }
  })
}

/**
 * A step is begun. Refused while the step before is not finished, and while a cure before it has not run as long as
 * its profile asks; a missed window is shown, and where its cost is known that is settled first. Where another car
 * stands in its bay, or its people are at work on one, it asks. A coat begun in conditions its profile does not want
 * needs a reason; the conditions are kept either way.
 */
export function startStep(desk: Desk, input: StartStepInput): Promise<{ version: number }> {
  const { id, version, position, at = desk.now(), reason, accepted } = input
  return changeJob(desk, { id, version }, async now => {
    const { job, floor, when } = now
    const index = workAt(now, position)
    const step = found(job.steps[index], { position }, say('This step is not there; look at the job again.'))
    const fault = notYet(job.steps, index, at)
    if (fault?.why === 'begun')
      refuse(
        'begun',
        { position },
        say('"{name}" was begun at {at}.', { name: step.name, at: when(fault.at) }),
      )
    if (fault?.why === 'notItsTurn')
      refuse(
        'not-its-turn',
        { position },
        say('"{name}" comes before and is not finished.', { name: fault.step.name }),
      )
    checkMoment(now, at, lastActual(job.steps))
    if (fault?.why === 'tooEarly')
      refuse(
        'too-early',
        { at },
        fault.step.kind === 'hold'
          ? say('"{name}" runs until {readyAt}, by the cure profile; "{name2}" may start then.', {
              name: fault.step.name,
              readyAt: when(fault.readyAt),
              name2: step.name,
            })
          : say('"{name}" may start from {readyAt}.', { name: step.name, readyAt: when(fault.readyAt) }),
      )
    // Planned too late, it may still be begun in time.
    const begun = { ...job, steps: job.steps.with(index, { ...step, actualStartAt: at }) }
    const missed = missedIn({ ...floor, nowAt: at }, begun, now.row.steps)
    if (missed?.late === index)
      refuse(
        'missed',
        { position },
        say(
          '"{name}" comes too late after "{name2}": add the work that costs, or say why not, at the head of the job.',
          { name: step.name, name2: job.steps[missed.kept]!.name },
        ),
      )
    const taken = accepted
      ? []
      : [...takenFor(floor, job, step, at), ...(await unansweredSpot(now.tx, id, step.stage))]
    if (taken.length > 0) refuse('taken', { position }, taken.join(' '))
    await assertPaintAllows(now.tx, { jobId: id, stage: step.stage, position }, at)
    const coat = await coatBegun(now, step, at, reason?.trim() ?? '')
    return {
      actuals: { index, actualStartAt: at, actualEndAt: null },
      act: 'started',
      detail: { position, step: step.name, at, ...(coat && coat.reason !== '' && { reason: coat.reason }) },
      also: coat && (tx => keepCheck(tx, { jobId: id, position, at, who: desk.who, ...coat })),
    }
  })
}

/** What the bay was like, where the step lays something that cures. */
async function coatBegun({ tx, floor, products, row }: JobNow, step: FloorStep, at: number, reason: string) {
  const product = products.get(step.productId ?? '')
  if (!product?.cureProfile || (step.stage !== 'coat' && step.stage !== 'topper')) return undefined
  const measured = await measuredIn(tx, step.bayId, at)
  const check = checkCoat(product.cureProfile, measured, floor.shop.units)
  const open = await openChecks(tx, row.id, ['arrival', 'coat'])
  const warnings = [...open.map(words => say('Not ticked off: {words}.', { words })), ...check.warnings]
  return { ...reasonedCheck({ ...check, warnings }, reason), productName: product.name }
}

/**
 * A step is done. After a coat its cure runs from this very minute, early or late. What it drew is taken off the shelf
 * in the same transaction: a crash leaves both or neither.
 */
export function finishStep(desk: Desk, input: FinishStepInput): Promise<{ version: number }> {
  const { id, version, position, at = desk.now(), draws, asPlanned } = input
  return changeJob(desk, { id, version }, async now => {
    const index = workAt(now, position)
    const { name = '', actualStartAt = null, actualEndAt = null } = now.job.steps[index] ?? {}
    if (actualStartAt === null)
      refuse('not-begun', { position }, say('"{name}" was not begun: start it first.', { name }))
    if (actualEndAt !== null)
      refuse('done', { position }, say('"{name}" is finished already; take that back first.', { name }))
    checkMoment(now, at, actualStartAt)
    const drawn = asPlanned ? await plannedDraws(now.tx, desk.now(), { jobId: id, position }) : draws
    return {
      actuals: { index, actualStartAt, actualEndAt: at },
      act: 'finished',
      detail: { position, step: name, at },
      also: drawn && ((tx, audit) => drawForStep(tx, audit, desk, { jobId: id, position, draws: drawn })),
    }
  })
}

/** Takes back the last thing that was recorded: a finish, else a start, else the arrival. */
export function reopenStep(
  desk: Desk,
  { id, version, position }: TakeBackInput,
): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, ({ row, job }) => {
    assertCan(row, 'takeBack')
    const index = lastRecorded(job.steps)
    const step = job.steps[index]
    if (position !== undefined && position !== step?.position)
      refuse(
        'not-last',
        { position },
        step
          ? say('Only the last time can be taken back, that of "{name}".', { name: step.name })
          : say('No step has been begun yet.'),
      )
    if (!step)
      return {
        data: { status: 'booked', arrivedAt: null },
        act: 'taken back',
        detail: { what: 'arrival', at: row.arrivedAt },
      }
    const finished = step.actualEndAt !== null
    return {
      actuals: { index, actualStartAt: finished ? step.actualStartAt : null, actualEndAt: null },
      act: 'taken back',
      detail: {
        what: finished ? 'finish' : 'start',
        step: step.name,
        position: step.position,
        at: finished ? step.actualEndAt : step.actualStartAt,
      },
    }
  })
}

/** The place of a hands-on step of a car that is in the shop. */
function workAt({ row, job }: JobNow, position: number): number {
  assertCan(row, 'work')
  const index = job.steps.findIndex(step => step.position === position)
  const step = found(job.steps[index], { position }, say('This step is not there; look at the job again.'))
  if (step.kind === 'hold')
    refuse(
      'hold',
      { position },
      say('"{name}" begins and ends by itself, with its coat.', { name: step.name }),
    )
  return index
}

/** What has happened lies between the last thing recorded and now. */
export function checkMoment({ row, floor, when }: JobNow, at: number, after: number | null): void {
  if (at > floor.nowAt)
    refuse('to-come', { at }, say('{at} is still to come; give the time it happened.', { at: when(at) }))
  const least = Math.max(after ?? row.createdAt, row.arrivedAt ?? row.createdAt)
  if (at < least)
    refuse(
      'too-old',
      { at },
      say('{at} is before what was recorded last, {least}; give a later time.', {
        at: when(at),
        least: when(least),
      }),
    )
}
