/** What is taken back must not want a place that somebody else was given meanwhile. */
import { type Conflict, conflictsOn } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'
import { type FollowedRow, keyOf, touchedSince } from '../../store/undo/restoreRows.ts'
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
  /** Jobs that were changed since. What any other is in the way of, it was in the way of before the act too. */
  readonly changed: ReadonlySet<string>
  readonly conflicts: ReadonlySet<string>
}

/** What is in each other's way before anything is put back; null where nobody can have been given a place since. */
export async function floorBefore(
  tx: Tx,
  nowAt: number,
  actId: number,
  rows: readonly FollowedRow[],
): Promise<FloorBefore | null> {
  if (!rows.some(row => placing.has(row.table))) return null
  const changed = await touchedSince(tx, actId, 'Job')
  if (changed.size === 0) return null
  const jobIds = rows.filter(row => row.table === 'Job').map(row => keyOf(row.key))
  return { jobIds, changed, conflicts: new Set((await overlaps(tx, nowAt)).map(sameOf)) }
}

/** Says what has the place now, where there is something that was not in the way before. */
export async function assertStandsAgain(
  tx: Tx,
  nowAt: number,
  before: FloorBefore | null,
  no: (why: string) => never,
): Promise<void> {
  if (!before) return
  const { changed, conflicts, jobIds } = before
  const added = (await overlaps(tx, nowAt)).find(
    conflict => changed.has(conflict.otherId ?? '') && !conflicts.has(sameOf(conflict)),
  )
  if (added) no(added.words)
  const floor = await loadFloor(tx, nowAt, nowAt)
  for (const job of await jobRows(tx, floor, { id: { in: [...jobIds] }, status: live })) {
    const since = (await otherVisits(tx, floor, job)).filter(visit => changed.has(visit.jobId))
    const words = visitInTheWay(floor, since, job)
    if (words !== null) no(words)
  }
}

/** Two cars, or two steps, that want one bay, person or thing; somebody who is away is reality, and is shown. */
async function overlaps(tx: Tx, nowAt: number): Promise<Conflict[]> {
  const { _max } = await tx.job.aggregate({ where: { status: live }, _max: { handoverAt: true } })
  const floor = await loadFloor(tx, nowAt, Math.max(nowAt, _max.handoverAt ?? nowAt) + 1)
  return conflictsOn(floor).filter(conflict => conflict.otherId !== undefined)
}

const sameOf = ({ jobId, bayId, words }: Conflict) => JSON.stringify([jobId, bayId, words])
