/** A job's steps at places they have not got yet: as a plan has them, and as rows. */
import { crewRows, peopleOf } from '../../domain/floor/index.ts'
import type { Plan } from '../../domain/schedule/index.ts'
import type { Tx } from '../../store/store.ts'
import type { JobRow } from './jobRows.ts'

/** The job as it would be, its steps from `index` on at the plan's places. */
export function placedJob({ job, index }: { job: JobRow; index: number }, plan: Plan): JobRow {
  const steps = job.steps.map((step, i) => {
    const placed = plan.steps[i - index]
    if (i < index || !placed) return step
    return {
      ...step,
      bayId: placed.bay,
      startAt: placed.start,
      endAt: placed.end,
      ...peopleOf(placed),
      movedToBayId: placed.moved?.bay ?? null,
      movedAt: placed.moved?.at ?? null,
    }
  })
  return {
    ...job,
    steps,
    dropOffAt: index === 0 ? steps[0]!.startAt : job.dropOffAt,
    handoverAt: plan.handover,
    leavesAt: plan.handover,
  }
}

/** Writes where these steps now are, when, and with whom: planned so, and taken to come so. */
export async function writePlaces(tx: Tx, steps: JobRow['steps']): Promise<void> {
  for (const { id, minutes, bayId, startAt, endAt, movedToBayId, movedAt, ...people } of steps) {
    const times = { plannedAt: startAt, plannedEndAt: endAt, startAt, endAt, movedToBayId, movedAt }
    await tx.jobStepCrew.deleteMany({ where: { stepId: id } })
    await tx.jobStep.update({
      where: { id },
      data: { minutes, bayId, ...times, crew: { create: crewRows(people) } },
    })
  }
}
