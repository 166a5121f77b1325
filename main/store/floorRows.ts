import type { FloorRow } from '../domain/floor/index.ts'
import type { Tx } from './store.ts'

/** What stands in each array of a row, in the order the query gives it. */
type Cells = [
  ...[jobId: string, number: number, status: FloorRow['status'], plate: string, promisedAt: number],
  ...[plannedHandoverAt: number, handoverAt: number, arrivedAt: number | null, fetchAt: number | null],
  ...[coveredBy: string | null],
  ...[position: number, kind: string, name: string, stage: string, needs: string, skill: string | null],
  ...[crewCount: number, help: unknown, minutes: number, splittable: number, sameBay: number],
  ...[waitMin: number | null, waitMax: number | null, moveAfterMin: number | null, productId: string | null],
  ...[bayId: string, plannedAt: number, plannedEndAt: number, startAt: number, endAt: number],
  ...[actualStartAt: number | null, actualEndAt: number | null, movedToBayId: string | null],
  ...[movedAt: number | null, crew: string | null, helpers: string | null],
]

/**
 * The steps of all jobs that hold a bay somewhere in `[nowAt, toAt)`, job by job in order. One flat query, because a
 * promise reads it while the caller is on the phone: booked jobs, cars in the shop (also those that should be gone),
 * and places held that have not lapsed. It comes as one text of arrays, which is taken apart three times as fast as
 * some thousand rows are.
 */
export async function floorRows(tx: Tx, nowAt: number, toAt: number): Promise<FloorRow[]> {
  const [found] = await tx.$queryRaw<{ cells: string }[]>`
    select json_group_array(json_array(
      jobId, number, status, plate, promisedAt, plannedHandoverAt, handoverAt, arrivedAt, fetchAt, coveredBy,
      position, kind, name, stage, needs, skill, crewCount, json(help), minutes, splittable, sameBay,
      waitMin, waitMax, moveAfterMin, productId, bayId, plannedAt, plannedEndAt, startAt, endAt,
      actualStartAt, actualEndAt, movedToBayId, movedAt, crew, helpers)) as cells
    from (
      select j.id as jobId, j.number, j.status, v.plate, j.promisedAt, j.plannedHandoverAt, j.handoverAt, j.arrivedAt, j.fetchAt, j.coveredBy,
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
      order by j.id, s.position)`
  return (JSON.parse(found?.cells ?? '[]') as Cells[]).map(rowOf)
}

function rowOf(cells: Cells): FloorRow {
  const [
    jobId,
    number,
    status,
    plate,
    promisedAt,
    plannedHandoverAt,
    handoverAt,
    arrivedAt,
    fetchAt,
    coveredBy,
    position,
    kind,
    name,
    stage,
    needs,
    skill,
    crewCount,
    help,
    minutes,
    splittable,
    sameBay,
    waitMin,
    waitMax,
    moveAfterMin,
    productId,
    bayId,
    plannedAt,
    plannedEndAt,
    startAt,
    endAt,
    actualStartAt,
    actualEndAt,
    movedToBayId,
    movedAt,
    crew,
    helpers,
  ] = cells
  return {
    jobId,
    number,
    status,
    plate,
    promisedAt,
    plannedHandoverAt,
    handoverAt,
    arrivedAt,
    fetchAt,
    coveredBy,
    position,
    kind,
    name,
    stage,
    needs,
    skill,
    crewCount,
    help,
    minutes,
    splittable: splittable === 1,
    sameBay: sameBay === 1,
    waitMin,
    waitMax,
    moveAfterMin,
    productId,
    bayId,
    plannedAt,
    plannedEndAt,
    startAt,
    endAt,
    actualStartAt,
    actualEndAt,
    movedToBayId,
    movedAt,
    crew,
    helpers,
  }
}
