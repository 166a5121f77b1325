import type { FloorRow } from '../domain/floor/index.ts'
import type { Tx } from './store.ts'

/**
 * The steps of all jobs that hold a bay somewhere in `[nowAt, toAt)`, job by job in order. One flat query, because a
 * promise reads it while the caller is on the phone: booked jobs, cars in the shop (also those that should be gone),
 * and places held that have not lapsed.
 */
export async function floorRows(tx: Tx, nowAt: number, toAt: number): Promise<FloorRow[]> {
  const rows = await tx.$queryRaw<
    (Omit<FloorRow, 'splittable' | 'sameBay'> & { splittable: number; sameBay: number })[]
  >`
    select j.id as jobId, j.number, j.status, v.plate, j.promisedAt, j.plannedHandoverAt, j.handoverAt, j.arrivedAt, j.coveredBy,
      s.position, s.kind, s.name, s.stage, s.needs, s.skill, s.crewCount, s.help, s.minutes, s.splittable, s.sameBay, s.waitMin, s.waitMax, s.moveAfterMin,
      s.productId, s.bayId, s.plannedAt, s.plannedEndAt, s.startAt, s.endAt, s.actualStartAt, s.actualEndAt,
      s.movedToBayId, s.movedAt,
      (select group_concat(c.crewId) from JobStepCrew c where c.stepId = s.id) as crew,
      (select group_concat(c.crewId) from JobStepCrew c where c.stepId = s.id and c.helps) as helpers
    from Job j join Vehicle v on v.id = j.vehicleId join JobStep s on s.jobId = j.id
    where j.dropOffAt < ${toAt} and (
      j.status = 'inShop'
      or (j.status = 'booked' and j.handoverAt > ${nowAt})
      or (j.status = 'held' and j.handoverAt > ${nowAt} and j.heldUntilAt > ${nowAt})
    )
    order by j.id, s.position`
  return rows.map(row => ({ ...row, splittable: Boolean(row.splittable), sameBay: Boolean(row.sameBay) }))
}
