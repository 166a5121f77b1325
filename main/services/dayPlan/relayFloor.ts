/** The floor with the cars that may be laid anew, and each as it stands. */
import { wordsFor } from '../../domain/floor/index.ts'
import { mayRelay, objections, type RelayTask, type Rush, relayTask } from '../../domain/relay/index.ts'
import { reasonText } from '../../domain/schedule/index.ts'
import { sentence } from '../../domain/words.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows, nameOfCar, vehicleWords } from '../floor/jobRows.ts'
import type { LaidCar } from './runs.ts'

/** More cars than a shop of twelve bays has in a month. */
export const mostCars = 120

export interface Layable {
  readonly task: RelayTask
  readonly cars: LaidCar[]
  /** Cars within the time that stay because somebody pinned them. */
  readonly pinned: { jobId: string; version: number; plate: string; customerName: string }[]
  /** Cars within the time that are beyond the most that are laid at once. */
  readonly left: number
}

/**
 * The cars of the floor that come before `untilAt` and may be laid anew, the first ones to come. One that has another
 * visit booked stays, and so does one with which something is lent that another borrows too: the day plan knows nothing of
 * a car that is here twice, nor of a loan car.
 */
export async function layable(tx: Tx, floor: Floor, untilAt: number, rush?: Rush): Promise<Layable> {
  const ids = floor.jobs.flatMap(job => (job.status === 'booked' && job.arrivedAt === null ? job.id : []))
  const rows = await jobRows(tx, floor, { id: { in: ids } })
  const visits = new Map<string, number>()
  for (const { vehicleId } of await tx.job.findMany({
    where: { status: { in: ['booked', 'inShop', 'held'] } },
    select: { vehicleId: true },
  }))
    visits.set(vehicleId, (visits.get(vehicleId) ?? 0) + 1)
  const coming = rows.filter(row => mayRelay({ ...row, pinned: false }, untilAt))
  const sharing = borrowersOfOne(floor)
  const free = coming.filter(row => !row.pinned && visits.get(row.vehicleId) === 1 && !sharing.has(row.id))
  const taken = free.slice(0, mostCars)
  const task: RelayTask = {
    ...relayTask(floor, new Set(taken.map(row => row.id)), { rush }),
    lent: Object.fromEntries(taken.map(row => [row.id, row.loans.map(loan => loan.lendableId)])),
  }
  return {
    task,
    cars: carsOf(floor, task, taken),
    pinned: coming
      .filter(row => row.pinned)
      .map(row => ({
        jobId: row.id,
        version: row.version,
        plate: carName(row),
        customerName: row.customer.name,
      })),
    left: free.length - taken.length,
  }
}

/** The jobs that borrow a thing which another of the floor borrows too. */
function borrowersOfOne({ lent }: Floor): Set<string> {
  const borrowers = new Map<string, string[]>()
  for (const [jobId, things] of lent ?? [])
    for (const { id } of things) borrowers.set(id, [...(borrowers.get(id) ?? []), jobId])
  return new Set([...borrowers.values()].filter(jobs => jobs.length > 1).flat())
}

/** The cars of a task, each with what stands against its place as it is. */
export function carsOf(floor: Floor, task: RelayTask, rows: readonly JobRow[]): LaidCar[] {
  const found = objections(task, task.present, Object.keys(task.present))
  return rows.map(row => {
    const stepNames = row.steps.map(step => step.name)
    const words = wordsFor(floor, stepNames)
    const violations = found.find(({ jobId }) => jobId === row.id)?.violations ?? []
    return {
      jobId: row.id,
      version: row.version,
      plate: carName(row),
      vehicle: vehicleWords(row.vehicle),
      customerName: row.customer.name,
      promisedAt: row.promisedAt,
      handoverAt: row.handoverAt,
      stepNames,
      broken: [...new Set(violations.map(violation => sentence(reasonText(violation, words))))].slice(0, 2),
    }
  })
}

function carName({ vehicle }: JobRow): string {
  return nameOfCar(vehicle)
}
