import { openMinutesBetween } from '../../domain/calendar/index.ts'
import { coatsOf, leavingOf, leavingTimes } from '../../domain/floor/index.ts'
import { lastActual } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkMoments } from '../../domain/shop/index.ts'
import { listWords } from '../../domain/words.ts'
import type { Desk } from '../desk/desk.ts'
import { dropStepDraws } from '../shelf/stepDraws.ts'
import { upkeepAfterHandover } from '../upkeep/begin.ts'
import { assertCan } from './assertCan.ts'
import { openChecks } from './checks.ts'
import type { CancelInput, HandOverInput, PromiseInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'
import { checkMoment } from './jobSteps.ts'

/**
 * The car goes home. Before the profiles' earliest handover, or with steps undone, only with a reason, which is kept.
 * Nothing here says that a coating is safe: it says which figure is met, and the data sheet decides.
 */
export function handOver(
  desk: Desk,
  { id, version, at = desk.now(), reason }: HandOverInput,
): Promise<{ version: number }> {
  const why = reason?.trim() ?? ''
  return changeJob(desk, { id, version }, async now => {
    const { tx, row, job, products, when } = now
    assertCan(row, 'handOver')
    checkMoment(now, at, lastActual(job.steps))
    const { safeAt, advisedAt } = leavingTimes(job.steps, products, leavingOf(job))
    const dry = safeAt > leavingTimes(job.steps, products, 'covered').safeAt
    const coated = coatsOf(job.steps, products).length > 0
    const undone = job.steps.filter(step => step.kind === 'work' && step.actualEndAt === null)
    const open = await openChecks(tx, id, checkMoments)
    const against = [
      ...(open.length > 0
        ? [say('{open} not ticked off', { open: listWords(open.map(words => `"${words}"`)) })]
        : []),
      ...(undone.length > 0
        ? [say('{undone} not finished', { undone: listWords(undone.map(step => `"${step.name}"`)) })]
        : []),
      ...(coated && at < safeAt
        ? [
            dry
              ? say(
                  'by the cure profile the earliest pick-up of the car, which has to stay dry, is {safeAt}',
                  { safeAt: when(safeAt) },
                )
              : say('by the cure profile the earliest pick-up is {safeAt}', {
                  safeAt: when(safeAt),
                }),
          ]
        : []),
    ]
    if (against.length > 0 && why === '')
      refuse(
        'reason-needed',
        { reason },
        coated
          ? say(
              'Not yet: {against}. The data sheet decides; handing over now needs a reason, which is kept.',
              { against: listWords(against) },
            )
          : say('Not yet: {against}. Handing over now needs a reason, which is kept.', {
              against: listWords(against),
            }),
      )
    return {
      data: { status: 'handedOver', leftAt: at },
      act: 'handed over',
      detail: {
        at,
        ...(coated && { safeAt, advisedAt }),
        undone: undone.map(step => step.name),
        ...(open.length > 0 && { open }),
        reason: why,
      },
      also: (tx, audit) =>
        upkeepAfterHandover(tx, audit, {
          jobId: id,
          vehicleId: row.vehicleId,
          steps: job.steps,
          products,
          at,
          zone: now.floor.zone,
          who: desk.who,
        }),
    }
  })
}

/** A new promise, told to the customer: never before the car can be ready, and at a time when somebody is there. */
export function promiseAgain(
  desk: Desk,
  { id, version, promisedAt }: PromiseInput,
): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, ({ row, job, floor, when }) => {
    assertCan(row, 'promise')
    if (promisedAt < job.handoverAt)
      refuse(
        'promise-early',
        { promisedAt },
        say('The car is now expected home {handoverAt}: promise that or later.', {
          handoverAt: when(job.handoverAt),
        }),
      )
    if (promisedAt >= floor.toAt)
      refuse(
        'promise-far',
        { promisedAt },
        say('{promisedAt} is too far off to promise; give an earlier day.', { promisedAt: when(promisedAt) }),
      )
    if (openMinutesBetween(floor.open, promisedAt - 1, promisedAt + 1) === 0)
      refuse(
        'promise-closed',
        { promisedAt },
        say('The shop is closed {promisedAt}; promise a time when somebody is there.', {
          promisedAt: when(promisedAt),
        }),
      )
    return { data: { promisedAt }, act: 'promised', detail: { from: row.promisedAt, to: promisedAt } }
  })
}

/** Calls a booking off; its place is free at once. A car that is here is handed over instead. */
export function cancelJob(desk: Desk, { id, version, reason }: CancelInput): Promise<{ version: number }> {
  const why = reason.trim()
  if (why === '')
    refuse('reason-needed', { reason }, say('Write down why the job is cancelled; a few words will do.'))
  return changeJob(desk, { id, version }, ({ row }) => {
    assertCan(row, 'cancel')
    return {
      data: { status: 'cancelled' },
      act: 'cancelled',
      detail: { reason: why },
      also: tx => dropStepDraws(tx, [id]),
    }
  })
}
