import type { FloorStep } from '../../domain/floor/index.ts'
import { type JobStatus, statusAt } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { type FoundJob, findJobs, type JobWhere, peopleIn } from '../../store/jobRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from './floor.ts'
import { withLaidCoats } from './laidCoats.ts'

/** A job with everything a screen says of it, its steps at their projected times. */
export type JobRow = Omit<FoundJob, 'steps' | 'status'> & {
  status: JobStatus
  steps: (FloorStep & Pick<FoundJob['steps'][number], 'id' | 'missed' | 'missedMin' | 'missedReason'>)[]
  /** Until when it holds its last bay. */
  leavesAt: number
}

/** The jobs that match, soonest first; those in the shop as the floor projects them. */
export async function jobRows(tx: Tx, floor: Floor, where: JobWhere): Promise<JobRow[]> {
  const rows = await findJobs(tx, where)
  const live = new Map(floor.jobs.map(job => [job.id, job]))
  const all = rows.map(row => {
    const now = live.get(row.id)
    const steps = row.steps.map((step, i) => ({
      ...step,
      ...now?.steps[i],
      ...peopleIn(step.crew),
    }))
    const handoverAt = now?.handoverAt ?? row.handoverAt
    return {
      ...row,
      status: statusAt(row, floor.nowAt),
      handoverAt,
      leavesAt: row.leftAt ?? now?.leavesAt ?? handoverAt,
      steps,
    }
  })
  // Cars of the floor carry their clocks already; one that has left keeps the clock it left with.
  const left = new Map(
    (
      await withLaidCoats(
        tx,
        floor.nowAt,
        all.filter(row => row.status === 'handedOver'),
      )
    ).map(row => [row.id, row]),
  )
  return all.map(row => left.get(row.id) ?? row)
}

/** Which jobs the board shows in `[fromAt, toAt)`: all that hold a bay then, and those that have left it. */
export function shownBetween(fromAt: number, toAt: number, nowAt: number): JobWhere {
  return {
    dropOffAt: { lt: toAt },
    OR: [
      { status: 'inShop' },
      { status: 'booked', handoverAt: { gt: fromAt } },
      { status: 'held', handoverAt: { gt: fromAt }, heldUntilAt: { gt: nowAt } },
      { status: 'handedOver', leftAt: { gt: fromAt } },
    ],
  }
}

/** `grey Marlo Wendrel`, or its size where nobody noted more. */
export function vehicleWords(vehicle: {
  colour: string
  make: string
  model: string
  sizeClass: string
}): string {
  const words = [vehicle.colour, vehicle.make, vehicle.model].filter(Boolean).join(' ')
  return words === '' ? say('{sizeClass} vehicle', { sizeClass: say(vehicle.sizeClass) }) : words
}

/** The plate, or that there is none yet. */
export function plateWords(plate: string): string {
  return plate === '' ? say('no plate') : plate
}

/** What a car is called where its plate comes later: "silver Marlo". */
export function nameOfCar({ plate, colour, make }: { plate: string; colour: string; make: string }): string {
  return plate || [colour, make].filter(Boolean).join(' ') || plateWords(plate)
}
