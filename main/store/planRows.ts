/** Plans in use and what was written down about them, of a few cars or of all. */

import type { UpkeepEntry, UpkeepPlan } from './generated/client.ts'
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

export type PlanEntry = Pick<
  UpkeepEntry,
  'vehicleId' | 'planId' | 'what' | 'ruleOn' | 'onDay' | 'toDay' | 'rule' | 'why' | 'jobId'
>

/** Text of a JSON list of objects, one for each row; tens of thousands of rows come in one piece. */
function listOf(columns: Prisma.Sql, order: Prisma.Sql, from: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`select json_group_array(json_object(${columns}) order by ${order}) as list from ${from}`
}

async function read<T>(tx: Tx, query: Prisma.Sql): Promise<T[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>(query)
  return JSON.parse(row?.list ?? '[]') as T[]
}

const planColumns = Prisma.sql`
  'id', p.id, 'vehicleId', p.vehicleId, 'kind', p.kind, 'title', p.title, 'rule', p.rule, 'anchorTo', p.anchorTo,
  'anchorOn', p.anchorOn, 'anchorEvent', p.anchorEvent, 'earlyDays', p.earlyDays, 'lateDays', p.lateDays,
  'productId', p.productId, 'jobId', p.jobId, 'createdAt', p.createdAt, 'archivedAt', p.archivedAt,
  'version', p.version`

/** The plans not ended, of cars and owners not put away, by id. */
export function planRows(
  tx: Tx,
  { vehicleId, planIds }: { vehicleId?: string; planIds?: readonly string[] },
): Promise<UpkeepPlan[]> {
  const ofCar = vehicleId === undefined ? Prisma.empty : Prisma.sql`and p.vehicleId = ${vehicleId}`
  const named =
    planIds === undefined
      ? Prisma.empty
      : Prisma.sql`and p.id in (select value from json_each(${JSON.stringify(planIds)}))`
  return read<UpkeepPlan>(
    tx,
    listOf(
      planColumns,
      Prisma.sql`p.id`,
      Prisma.sql`UpkeepPlan p join Vehicle v on v.id = p.vehicleId join Customer c on c.id = v.customerId
        where p.archivedAt is null and v.archivedAt is null and c.archivedAt is null ${ofCar} ${named}`,
    ),
  )
}

/** What stands about these cars and their plans in use, or about all of them, in the order it was written down. */
export function planEntries(tx: Tx, vehicleIds: readonly string[] | null): Promise<PlanEntry[]> {
  const some =
    vehicleIds === null
      ? Prisma.empty
      : Prisma.sql`and e.vehicleId in (select value from json_each(${JSON.stringify(vehicleIds)}))`
  return read<PlanEntry>(
    tx,
    listOf(
      Prisma.sql`'vehicleId', e.vehicleId, 'planId', e.planId, 'what', e.what, 'ruleOn', e.ruleOn, 'onDay', e.onDay,
        'toDay', e.toDay, 'rule', e.rule, 'why', e.why, 'jobId', e.jobId`,
      Prisma.sql`e.seq`,
      Prisma.sql`UpkeepEntry e left join UpkeepPlan p on p.id = e.planId
        where e.voidedAt is null and p.archivedAt is null ${some}`,
    ),
  )
}

/** The plates and owners' names of cars, by car. */
export async function carOwners(
  tx: Tx,
  vehicleIds: readonly string[],
): Promise<Map<string, { plate: string; customerName: string }>> {
  const rows = await read<{ id: string; plate: string; customerName: string }>(
    tx,
    listOf(
      Prisma.sql`'id', v.id, 'plate', v.plate, 'customerName', c.name`,
      Prisma.sql`v.id`,
      Prisma.sql`Vehicle v join Customer c on c.id = v.customerId
        where v.id in (select value from json_each(${JSON.stringify([...new Set(vehicleIds)])}))`,
    ),
  )
  return new Map(rows.map(({ id, ...row }) => [id, row]))
}
