/** A step that takes longer than it was booked for: places, draws and promise follow in the same act. */
import { durationWords } from '../../domain/calendar/index.ts'
import { projectJob } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { promiseOf } from '../../domain/schedule/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { jobRows } from '../floor/jobRows.ts'
import { moveProblem } from '../floor/movePlan.ts'
import { placedJob, writePlaces } from '../floor/placed.ts'
import { assertCan } from './assertCan.ts'
import type { StepMinutesInput } from './inputs.ts'
import { changeJob, floorJobOf, type JobNow } from './jobChange.ts'

/**
 * Gives a step that is not finished its new length. A car that is still to come is laid anew from its drop-off on,
 * wherever it gets home soonest; one that is here is carried forward. A promise that cannot be kept becomes the new
 * handover: the customer is to be told, and the history keeps both.
 */
export function setStepMinutes(desk: Desk, input: StepMinutesInput): Promise<{ version: number }> {
  const { id, version, position, minutes, chargeMinor } = input
  return changeJob(desk, { id, version }, async now => {
    const { row, floor } = now
    assertCan(row, 'move')
    const index = row.steps.findIndex(step => step.position === position)
    const step = row.steps[index]
    if (step?.kind !== 'work' || step.actualEndAt !== null)
      refuse('no-step', { position }, say('This is no step still to be done; look at the job again.'))
    if (minutes < floor.gridMin)
      refuse(
        'minutes-few',
        { minutes },
        say('A step takes {least} or more.', { least: durationWords(floor.gridMin) }),
      )
    if (chargeMinor < 0) refuse('price-negative', { chargeMinor }, say('A price is 0 or more.'))
    const { handoverAt, insert } =
      row.status === 'inShop' ? carried(now, index, minutes) : await laid(now, index, minutes)
    return {
      data: {
        // What is ready sooner than promised is not promised sooner.
        promisedAt: Math.max(row.promisedAt, handoverAt),
        ...(row.status !== 'inShop' && { plannedHandoverAt: handoverAt }),
      },
      insert,
      act: 'takes longer',
      detail: {
        step: step.name,
        position,
        before: step.minutes,
        after: minutes,
        promisedFrom: row.promisedAt,
        promisedTo: Math.max(row.promisedAt, handoverAt),
        ...(chargeMinor > 0 && { chargeMinor }),
      },
      also: async tx => {
        if (chargeMinor === 0) return
        const words = say('Longer work: {step}', { step: step.name })
        const at = await tx.jobCharge.count({ where: { jobId: id } })
        await tx.jobCharge.create({
          data: { jobId: id, position: at, kind: 'extra', words, amountMinor: chargeMinor },
        })
      },
    }
  })
}

/** A car that is here: what follows the step is pushed by it. */
function carried({ row, floor }: JobNow, index: number, minutes: number) {
  const job = floorJobOf(row, floor.nowAt)
  const steps = job.steps.map((step, i) => (i === index ? { ...step, minutes } : step))
  return {
    handoverAt: projectJob(floor, { ...job, steps }).job.handoverAt,
    insert: (tx: Tx) =>
      tx.jobStep.update({ where: { id: row.steps[index]!.id }, data: { minutes } }).then(() => {}),
  }
}

/** A car still to come: laid again from when it was to come. */
async function laid({ tx, row, floor }: JobNow, index: number, minutes: number) {
  const [found] = await jobRows(tx, floor, { id: row.id })
  const first = found?.steps[0]
  if (!found || !first)
    return refuse('missing', { id: row.id }, say('This job is not there; look at the board again.'))
  const job = { ...found, steps: found.steps.map((step, i) => (i === index ? { ...step, minutes } : step)) }
  const from = Math.max(first.plannedAt, floor.nowAt)
  const offer = promiseOf(moveProblem({ floor, job, index: 0 }, { bays: null, from, to: null }), 'soonest')
  if (!offer.feasible)
    refuse('no-place', { minutes }, say('No place fits that long; give the booking another day.'))
  const placed = placedJob({ job, index: 0 }, offer.plan)
  return {
    handoverAt: placed.handoverAt,
    insert: async (tx: Tx) => {
      await writePlaces(tx, placed.steps)
      await tx.job.update({ where: { id: row.id }, data: { dropOffAt: placed.dropOffAt } })
    },
  }
}
