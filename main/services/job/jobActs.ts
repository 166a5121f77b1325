import { openMinutesBetween } from '../../domain/calendar/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import { listWords } from '../desk/shopWords.ts'
import { leavingTimes } from '../floor/cureMarks.ts'
import { upkeepAfterHandover } from '../upkeep/begin.ts'
import { changeJob, type JobAct } from './jobChange.ts'
import { checkMoment, type TimedAct } from './jobSteps.ts'

/**
 * The car goes home. Before the profiles' earliest handover, or with steps undone, only with a reason, which is kept.
 * Nothing here says that a coating is safe: it says which figure is met, and the data sheet decides.
 */
export function handOver(
  desk: Desk,
  { id, version, at = desk.now(), reason }: TimedAct & { reason?: string | undefined },
): Promise<{ version: number }> {
  const why = reason?.trim() ?? ''
  return changeJob(desk, { id, version }, ground => {
    const { row, job, products, when } = ground
    if (row.status !== 'inShop')
      throw new Refusal(
        'not-here',
        'id',
        id,
        `Job ${row.number} is not in the shop, so it cannot be handed over.`,
      )
    checkMoment(ground, at, null)
    const { safeAt, advisedAt } = leavingTimes(job.steps, products)
    const undone = job.steps.filter(step => step.kind === 'work' && step.actualEndAt === null)
    const against = [
      ...(undone.length > 0 ? [`${listWords(undone.map(step => `"${step.name}"`))} not finished`] : []),
      ...(at < safeAt ? [`by the cure profile the car may leave at the earliest ${when(safeAt)}`] : []),
    ]
    if (against.length > 0 && why === '')
      throw new Refusal(
        'reason-needed',
        'reason',
        reason ?? null,
        `Not yet: ${listWords(against)}. The data sheet decides; handing over now needs a reason, which is kept.`,
      )
    return {
      data: { status: 'handedOver', leftAt: at },
      act: 'handed over',
      detail: { at, safeAt, advisedAt, undone: undone.map(step => step.name), reason: why },
      also: (tx, audit) =>
        upkeepAfterHandover(tx, audit, {
          jobId: id,
          vehicleId: row.vehicleId,
          steps: job.steps,
          products,
          at,
          zone: ground.floor.zone,
          who: desk.who,
        }),
    }
  })
}

/** A new promise, told to the customer: never before the car can be ready, and at a time when somebody is there. */
export function promiseAgain(
  desk: Desk,
  { id, version, promisedAt }: JobAct & { promisedAt: number },
): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, ({ row, job, floor, when }) => {
    if (row.status !== 'booked' && row.status !== 'inShop')
      throw new Refusal('no-promise', 'id', id, `Job ${row.number} has no promise to change.`)
    if (promisedAt < job.handoverAt)
      throw new Refusal(
        'promise-early',
        'promisedAt',
        promisedAt,
        `As it stands the car goes home ${when(job.handoverAt)}: promise that or later.`,
      )
    const doorOpen =
      openMinutesBetween(floor.open, promisedAt, promisedAt + 1) +
      openMinutesBetween(floor.open, promisedAt - 1, promisedAt)
    if (doorOpen === 0)
      throw new Refusal(
        'promise-closed',
        'promisedAt',
        promisedAt,
        `The shop is closed ${when(promisedAt)}; promise a time when somebody is there.`,
      )
    return { data: { promisedAt }, act: 'promised', detail: { from: row.promisedAt, to: promisedAt } }
  })
}

/** Calls a booking off; its place is free at once. A car that is here is handed over instead. */
export function cancelJob(
  desk: Desk,
  { id, version, reason }: JobAct & { reason: string },
): Promise<{ version: number }> {
  const why = reason.trim()
  if (why === '')
    throw new Refusal(
      'reason-needed',
      'reason',
      reason,
      'Write down why the job is cancelled; a few words will do.',
    )
  return changeJob(desk, { id, version }, ({ row }) => {
    if (row.status !== 'booked' && row.status !== 'held')
      throw new Refusal(
        'not-booked',
        'id',
        id,
        row.status === 'inShop'
          ? `The car of job ${row.number} is here: hand it over, with the reason.`
          : `Job ${row.number} is over; there is nothing to cancel.`,
      )
    return { data: { status: 'cancelled' }, act: 'cancelled', detail: { reason: why } }
  })
}
