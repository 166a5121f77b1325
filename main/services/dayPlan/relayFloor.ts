/** The floor with the cars that may be laid anew, and each as it stands. */
import { wordsFor } from '../../domain/floor/index.ts'
import { mayRelay, objections, type RelayTask, type Rush, relayTask } from '../../domain/relay/index.ts'
import { reasonText } from '../../domain/schedule/index.ts'
import { sentence } from '../../domain/words.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows, nameOfCar, vehicleWords } from '../floor/jobRows.ts'
import { goingWith } from './goingWith.ts'
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
 * The cars of the floor that come before `untilAt` and may be laid anew, the first ones to come. Of a car that is booked
 * more than once the first visit is, and comes before the next.
 */
export async function layable(tx: Tx, floor: Floor, untilAt: number, rush?: Rush): Promise<Layable> {
  const ids = floor.jobs.flatMap(job => (job.status === 'booked' && job.arrivedAt === null ? job.id : []))
  const rows = await jobRows(tx, floor, { id: { in: ids } })
  const coming = rows.filter(row => mayRelay({ ...row, pinned: false }, untilAt))
  const free = firstVisits(coming.filter(row => !row.pinned))
  const taken = free.slice(0, mostCars)
  const going = await goingWith(tx, floor, taken)
  const task = relayTask(floor, new Set(taken.map(row => row.id)), { rush, going })
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

/** One visit a vehicle, the first; in the order given. */
function firstVisits(rows: readonly JobRow[]): JobRow[] {
  const first = new Map<string, JobRow>()
  for (const row of rows) {
    const other = first.get(row.vehicleId)
    if (!other || row.dropOffAt < other.dropOffAt) first.set(row.vehicleId, row)
  }
  return rows.filter(row => first.get(row.vehicleId) === row)
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
