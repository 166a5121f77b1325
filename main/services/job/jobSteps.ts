import { Refusal } from '../../domain/refusal.ts'
import { checkCoat, keepCheck, measuredIn, reasonedCheck } from '../cure/coatCheck.ts'
import type { Desk } from '../desk/desk.ts'
import type { FloorStep } from '../floor/floorJobs.ts'
import { type DrawInput, drawForStep } from '../shelf/confirmDraws.ts'
import { type ActGround, changeJob, type JobAct } from './jobChange.ts'

export interface TimedAct extends JobAct {
  /** When it happened; now unless said otherwise. */
  at?: number | undefined
}

export interface StepAct extends TimedAct {
  position: number
}

/** The car is here. */
export function arrive(desk: Desk, { id, version, at = desk.now() }: TimedAct): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, ground => {
    const { row } = ground
    if (row.status !== 'booked')
      throw new Refusal(
        'not-booked',
        'id',
        id,
        row.status === 'held'
          ? `Job ${row.number} is only held: confirm it first.`
          : `Job ${row.number} is not waiting for its car.`,
      )
    checkMoment(ground, at, null)
    return { data: { status: 'inShop', arrivedAt: at }, act: 'arrived', detail: { at, dueAt: row.dropOffAt } }
  })
}

export interface StartAct extends StepAct {
  /** Why a coat is begun although the bay does not meet what its profile asks. */
  reason?: string | undefined
}

/**
 * A step is begun. Refused while the step before is not finished, and while a cure before it has not run as long as
 * its profile asks; a missed recoat window is not refused, it is shown. A coat begun in conditions its profile does not
 * want needs a reason; the conditions are kept either way.
 */
export function startStep(desk: Desk, { id, version, position, at = desk.now(), reason }: StartAct) {
  return changeJob(desk, { id, version }, async ground => {
    const { job, when } = ground
    const index = workAt(ground, position)
    const step = job.steps[index]!
    if (step.actualStartAt !== null)
      throw new Refusal(
        'begun',
        'position',
        position,
        `"${step.name}" was begun at ${when(step.actualStartAt)}.`,
      )
    const open = job.steps.slice(0, index).find(each => each.kind === 'work' && each.actualEndAt === null)
    if (open)
      throw new Refusal(
        'not-its-turn',
        'position',
        position,
        `"${open.name}" comes before and is not finished.`,
      )
    const before = job.steps[index - 1]
    checkMoment(ground, at, lastActual(job.steps))
    const readyAt = before ? before.endAt + (step.waitMin ?? 0) : at
    if (at < readyAt)
      throw new Refusal(
        'too-early',
        'at',
        at,
        before!.kind === 'hold'
          ? `"${before!.name}" runs until ${when(readyAt)}, by the cure profile; "${step.name}" may start then.`
          : `"${step.name}" may start from ${when(readyAt)}.`,
      )
    const coat = await coatBegun(ground, step, at, reason?.trim() ?? '')
    return {
      actuals: { index, actualStartAt: at, actualEndAt: null },
      act: 'started',
      detail: { position, step: step.name, at, ...(coat && coat.reason !== '' && { reason: coat.reason }) },
      also: coat && (tx => keepCheck(tx, { jobId: id, position, at, who: desk.who, ...coat })),
    }
  })
}

/** What the bay was like, where the step lays something that cures. */
async function coatBegun({ tx, floor, products }: ActGround, step: FloorStep, at: number, reason: string) {
  const product = products.get(step.productId ?? '')
  if (!product?.cureProfile || (step.stage !== 'coat' && step.stage !== 'topper')) return undefined
  const measured = await measuredIn(tx, step.bayId, at)
  const check = checkCoat(product.cureProfile, measured, floor.shop.units)
  return { ...reasonedCheck(check, reason), productName: product.name }
}

export interface FinishAct extends StepAct {
  /** What it drew from the shelf; left out, that is confirmed later. */
  draws?: DrawInput[] | undefined
}

/**
 * A step is done. After a coat its cure runs from this very minute, early or late. What it drew is taken off the shelf
 * in the same transaction: a crash leaves both or neither.
 */
export function finishStep(desk: Desk, { id, version, position, at = desk.now(), draws }: FinishAct) {
  return changeJob(desk, { id, version }, ground => {
    const { job } = ground
    const index = workAt(ground, position)
    const { name, actualStartAt, actualEndAt } = job.steps[index]!
    if (actualStartAt === null)
      throw new Refusal('not-begun', 'position', position, `"${name}" was not begun: start it first.`)
    if (actualEndAt !== null)
      throw new Refusal('done', 'position', position, `"${name}" is finished already; take that back first.`)
    checkMoment(ground, at, actualStartAt)
    return {
      actuals: { index, actualStartAt, actualEndAt: at },
      act: 'finished',
      detail: { position, step: name, at },
      also: draws && ((tx, audit) => drawForStep(tx, audit, desk, { jobId: id, position, draws })),
    }
  })
}

/** Takes back the last thing that was recorded: a finish, else a start, else the arrival. */
export function reopenStep(
  desk: Desk,
  { id, version, position }: JobAct & { position?: number | undefined },
) {
  return changeJob(desk, { id, version }, ({ row, job }) => {
    if (row.status !== 'inShop')
      throw new Refusal(
        'not-here',
        'id',
        id,
        `Job ${row.number} is not in the shop; nothing can be taken back.`,
      )
    const index = job.steps.findLastIndex(step => step.actualStartAt !== null)
    const step = job.steps[index]
    if (position !== undefined && position !== step?.position)
      throw new Refusal(
        'not-last',
        'position',
        position,
        step
          ? `Only the last time can be taken back, that of "${step.name}".`
          : 'No step has been begun yet.',
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
function workAt({ row, job }: ActGround, position: number): number {
  if (row.status !== 'inShop')
    throw new Refusal(
      'not-here',
      'id',
      row.id,
      row.status === 'booked'
        ? `The car of job ${row.number} is not here yet: record its arrival first.`
        : `Job ${row.number} is not in the shop.`,
    )
  const index = job.steps.findIndex(step => step.position === position)
  const step = job.steps[index]
  if (!step)
    throw new Refusal('missing', 'position', position, 'This step is not there; look at the job again.')
  if (step.kind === 'hold')
    throw new Refusal(
      'hold',
      'position',
      position,
      `"${step.name}" begins and ends by itself, with its coat.`,
    )
  return index
}

function lastActual(steps: readonly FloorStep[]): number | null {
  const times = steps.flatMap(step => [step.actualStartAt ?? [], step.actualEndAt ?? []].flat())
  return times.length > 0 ? Math.max(...times) : null
}

/** What has happened lies between the last thing recorded and now. */
export function checkMoment({ row, floor, when }: ActGround, at: number, after: number | null): void {
  if (at > floor.nowAt)
    throw new Refusal('to-come', 'at', at, `${when(at)} is still to come; give the time it happened.`)
  const least = Math.max(after ?? row.createdAt, row.arrivedAt ?? row.createdAt)
  if (at < least)
    throw new Refusal(
      'too-old',
      'at',
      at,
      `${when(at)} is before what was recorded last, ${when(least)}; give a later time.`,
    )
}
