/** What is taken back must not want a place that somebody else was given meanwhile. */
import { type Conflict, conflictsOn } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'
import { type FollowedRow, plainOf } from '../../store/undo/restoreRows.ts'
import { jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'

/** Tables whose rows say who is where when. */
const placing: ReadonlySet<string> = new Set([
  'Job',
  'JobStep',
  'JobStepCrew',
  'JobLoan',
  'Bay',
  'CrewMember',
  'Vehicle',
])

/** Jobs that hold a place. */
const live = { in: ['held', 'booked', 'inShop'] }

export interface FloorBefore {
  readonly jobIds: readonly string[]
  readonly conflicts: ReadonlySet<string>
}

/** What is in each other's way before anything is put back; null where the act placed nobody. */
export async function floorBefore(
  tx: Tx,
  nowAt: number,
  rows: readonly FollowedRow[],
): Promise<FloorBefore | null> {
  if (!rows.some(row => placing.has(row.table))) return null
  const jobIds = rows
    .filter(row => row.table === 'Job')
    .map(row => String(plainOf((JSON.parse(row.key) as string[])[0])))
  return { jobIds, conflicts: new Set((await overlaps(tx, nowAt)).map(keyOf)) }
}

/** Says what has the place now, where there is something that was not in the way before. */
export async function assertStandsAgain(
  tx: Tx,
  nowAt: number,
  before: FloorBefore | null,
  no: (why: string) => never,
): Promise<void> {
  if (!before) return
  const [added] = (await overlaps(tx, nowAt)).filter(conflict => !before.conflicts.has(keyOf(conflict)))
  if (added) no(added.words)
  const floor = await loadFloor(tx, nowAt, nowAt)
  for (const job of await jobRows(tx, floor, { id: { in: [...before.jobIds] }, status: live })) {
    const words = visitInTheWay(floor, await otherVisits(tx, floor, job), job)
    if (words !== null) no(words)
  }
}

/** Two cars, or two steps, that want one bay, person or thing; somebody who is away is reality, and is shown. */
async function overlaps(tx: Tx, nowAt: number): Promise<Conflict[]> {
  const { _max } = await tx.job.aggregate({ where: { status: live }, _max: { handoverAt: true } })
  const floor = await loadFloor(tx, nowAt, Math.max(nowAt, _max.handoverAt ?? nowAt) + 1)
  return conflictsOn(floor).filter(conflict => !conflict.uncovered)
}

const keyOf = ({ jobId, bayId, words }: Conflict) => JSON.stringify([jobId, bayId, words])
