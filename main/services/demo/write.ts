import { leavingTimes } from '../../domain/floor/index.ts'
import { withHelp } from '../../store/json.ts'
import type { AuditEntry, Tx } from '../../store/store.ts'
import type { Happened } from './happen.ts'

/** The bookings as rows, with the lines the desk and the crew would have left behind. */
export async function writeBookings(tx: Tx, happened: readonly Happened[], nowAt: number): Promise<void> {
  await tx.job.createMany({ data: happened.map(each => jobRow(each, nowAt)) })
  await tx.jobTreatment.createMany({
    data: happened.flatMap(({ job, sold }) =>
      sold.treatments.map(({ id, ...each }, position) => ({
        ...each,
        jobId: job.id,
        treatmentId: id,
        position,
      })),
    ),
  })
  await tx.jobStep.createMany({
    data: happened.flatMap(({ job }) =>
      job.steps.map(({ crewIds: _, ...step }) => ({
        ...withHelp(step),
        id: stepId(job.id, step.position),
        jobId: job.id,
      })),
    ),
  })
  await tx.jobStepCrew.createMany({
    data: happened.flatMap(({ job }) =>
      job.steps.flatMap(step =>
        step.crewIds.map(crewId => ({ stepId: stepId(job.id, step.position), crewId })),
      ),
    ),
  })
  await tx.jobCheck.createMany({ data: happened.flatMap(checkRows) })
  await tx.auditLine.createMany({ data: happened.flatMap(each => linesOf(each, nowAt)) })
}

/** What was due by now is ticked off, by the people the demo has. */
function checkRows({ job, sold, leftAt }: Happened) {
  const coatedAt = job.steps.find(step => step.stage === 'coat')?.actualStartAt ?? null
  const doneAt = { arrival: job.arrivedAt, coat: coatedAt, handover: leftAt }
  return sold.checks.map(({ moment, words }, position) => {
    const at = doneAt[moment]
    return { jobId: job.id, position, moment, words, doneAt: at, doneBy: at === null ? null : 'front desk' }
  })
}

function stepId(jobId: string, position: number): string {
  return `${jobId}-step-${position}`
}

/** Booked some days before the car comes, but never later than a while ago; held a moment ago. */
function createdAt({ job, heldUntilAt }: Happened, nowAt: number): number {
  if (heldUntilAt !== null) return nowAt - 3
  const days = 2 + (job.number % 4)
  return Math.min(job.steps[0]!.plannedAt - days * 1440, nowAt - 10 - job.number)
}

function jobRow(each: Happened, nowAt: number) {
  const { job, vehicle, condition, sold, leftAt, heldUntilAt } = each
  return {
    id: job.id,
    number: job.number,
    customerId: vehicle.customerId,
    vehicleId: vehicle.id,
    status: job.status,
    heldUntilAt,
    condition,
    dropOffAt: job.steps[0]!.plannedAt,
    promisedAt: job.promisedAt,
    plannedHandoverAt: job.plannedHandoverAt,
    handoverAt: job.handoverAt,
    ...leavingTimes(job.steps, sold.products, sold.leaving),
    arrivedAt: job.arrivedAt,
    leftAt,
    createdAt: createdAt(each, nowAt),
  }
}

function linesOf(each: Happened, nowAt: number) {
  const { job, leftAt, heldUntilAt } = each
  const made = createdAt(each, nowAt)
  const line = (at: number, who: string, act: string, detail: AuditEntry['detail']) => ({
    at,
    who,
    act,
    entity: 'job',
    entityId: job.id,
    detail: detail ?? {},
  })
  const desk = 'front desk'
  const times = { dropOffAt: job.steps[0]!.plannedAt, promisedAt: job.promisedAt }
  const lines = [
    line(made, desk, 'held', { number: job.number, heldUntilAt: heldUntilAt ?? made + 30, ...times }),
  ]
  if (heldUntilAt !== null) return lines
  lines.push(line(made + 4, desk, 'booked', { promisedAt: job.promisedAt }))
  if (job.promisedAt < job.plannedHandoverAt)
    lines.push(
      line(Math.min(made + 60, nowAt), desk, 'moved', {
        position: 0,
        bayId: job.steps[0]!.bayId,
        startAt: job.steps[0]!.plannedAt,
        handoverAt: job.plannedHandoverAt,
      }),
    )
  if (job.arrivedAt !== null)
    lines.push(line(job.arrivedAt, desk, 'arrived', { at: job.arrivedAt, dueAt: times.dropOffAt }))
  for (const { position, name: step, actualStartAt, actualEndAt } of job.steps) {
    if (actualStartAt !== null)
      lines.push(line(actualStartAt, 'crew', 'started', { position, step, at: actualStartAt }))
    if (actualEndAt !== null)
      lines.push(line(actualEndAt, 'crew', 'finished', { position, step, at: actualEndAt }))
  }
  if (leftAt !== null)
    lines.push(line(leftAt, desk, 'handed over', { at: leftAt, safeAt: leftAt, undone: [], reason: '' }))
  return lines
}
