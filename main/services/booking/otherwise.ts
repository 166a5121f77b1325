/** A booked car that does not come, or comes later; one that is ready and not fetched. Each stands in the history. */
import { dateOf, gridUp } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { promiseOf } from '../../domain/schedule/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { jobRows } from '../floor/jobRows.ts'
import { moveProblem } from '../floor/movePlan.ts'
import { placedJob, writePlaces } from '../floor/placed.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'
import { assertCan } from '../job/assertCan.ts'
import { changeJob, type JobNow } from '../job/jobChange.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { dropStepDraws } from '../shelf/stepDraws.ts'
import type { FetchInput, LaterInput, NoShowInput } from './inputs.ts'

/** Nobody came, so nothing that was sold is owed. Its place and what it borrows are free at once; the shop's fee stands on its bill where it asks one. */
export function noShow(desk: Desk, { id, version, fee }: NoShowInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, async ({ tx, row, floor, when }) => {
    assertCan(row, 'noShow')
    if (row.dropOffAt > floor.nowAt)
      refuse(
        'not-due',
        { id },
        say('The car is expected {at}; until then it may still come. Cancel the job if it will not.', {
          at: when(row.dropOffAt),
        }),
      )
    const { noShowMinor } = await moneyRules(tx)
    const feeMinor = fee ? noShowMinor : 0
    return {
      data: { status: 'noShow' },
      act: 'did not come',
      detail: { dueAt: row.dropOffAt, feeMinor },
      also: async tx => {
        await dropStepDraws(tx, [id])
        // What was agreed on top of work that is not done is not owed.
        await tx.jobCharge.deleteMany({ where: { jobId: id } })
        if (feeMinor > 0)
          await charge(tx, id, say('Fee: the car was not brought as booked'), { feeMinor, days: 1 })
      },
    }
  })
}

/**
 * The car comes later than booked. What is booked of it is laid anew from then on, wherever it gets home soonest; where
 * nothing fits, it keeps its place and the board says what is in the way. What was promised stays until somebody says otherwise.
 */
export function comesLater(desk: Desk, { id, version, at }: LaterInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, async now => {
    const { row, floor, when } = now
    assertCan(row, 'comesLater')
    if (at <= floor.nowAt)
      refuse('over', { at }, say('{at} is over; record the arrival instead.', { at: when(at) }))
    if (at >= floor.toAt)
      refuse('far', { at }, say('That is too far off: give the booking another day instead.'))
    const laid = await laidFrom(now, at)
    const detail = { dueAt: row.dropOffAt, at, ...(laid && { handoverAt: laid.handoverAt }) }
    if (!laid) return { act: 'comes later', detail }
    return {
      data: { dropOffAt: laid.dropOffAt, plannedHandoverAt: laid.handoverAt },
      insert: tx => writePlaces(tx, laid.steps),
      act: 'comes later',
      detail,
    }
  })

  async function laidFrom({ tx, row, floor }: JobNow, fromAt: number) {
    const [found] = await jobRows(tx, floor, { id: row.id })
    if (!found) return null
    const from = gridUp(floor, fromAt)
    const offer = promiseOf(
      moveProblem({ floor, job: found, index: 0 }, { bays: null, from, to: null }),
      'soonest',
    )
    if (!offer.feasible) return null
    const job = placedJob({ job: found, index: 0 }, offer.plan)
    return visitInTheWay(floor, await otherVisits(tx, floor, found), job) === null ? job : null
  }
}

/** A car that is ready is fetched at another time than promised: its bay is kept until then, and the shop's fee is asked. */
export function fetchLater(desk: Desk, { id, version, at, fee }: FetchInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, async ({ tx, row, job, floor, when }) => {
    assertCan(row, 'fetchLater')
    const undone = job.steps.find(step => step.kind === 'work' && step.actualEndAt === null)
    if (undone)
      refuse(
        'not-ready',
        { id },
        say('"{name}" is not finished: the car is not ready yet.', { name: undone.name }),
      )
    if (at < Math.max(floor.nowAt, job.handoverAt))
      refuse(
        'early',
        { at },
        say('Give a time from {from} on.', { from: when(Math.max(floor.nowAt, job.handoverAt)) }),
      )
    if (at >= floor.toAt) refuse('far', { at }, say('That is too far off; give an earlier day.'))
    const { keptDayMinor } = await moneyRules(tx)
    const days =
      fee && keptDayMinor > 0 ? daysKept(Math.max(row.promisedAt, job.handoverAt), at, floor.zone) : 0
    return {
      data: { fetchAt: at },
      act: 'fetched later',
      detail: { at, ...(days > 0 && { days, feeMinor: days * keptDayMinor }) },
      also: async tx => {
        if (days > 0)
          await charge(tx, id, say('Fee for each day the car was not fetched'), {
            feeMinor: keptDayMinor,
            days,
          })
      },
    }
  })
}

/** Days of the calendar after the one it was to be fetched on. */
function daysKept(dueAt: number, fetchAt: number, zone: string): number {
  const from = Temporal.PlainDate.from(dateOf(dueAt, zone))
  return Math.max(0, from.until(Temporal.PlainDate.from(dateOf(fetchAt, zone))).days)
}

async function charge(
  tx: Tx,
  jobId: string,
  words: string,
  { feeMinor, days }: { feeMinor: number; days: number },
): Promise<void> {
  const position = await tx.jobCharge.count({ where: { jobId } })
  await tx.jobCharge.create({
    data: { jobId, position, kind: 'extra', words, quantity: String(days), amountMinor: feeMinor },
  })
}
