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

const entryColumns = Prisma.sql`'vehicleId', e.vehicleId, 'planId', e.planId, 'what', e.what, 'ruleOn', e.ruleOn,
  'onDay', e.onDay, 'toDay', e.toDay, 'rule', e.rule, 'why', e.why, 'jobId', e.jobId`

/** What stands about all plans in use and their cars, in the order it was written down. */
export function allEntries(tx: Tx): Promise<PlanEntry[]> {
  return read<PlanEntry>(
    tx,
    listOf(
      entryColumns,
      Prisma.sql`e.seq`,
      Prisma.sql`UpkeepEntry e left join UpkeepPlan p on p.id = e.planId
        where e.voidedAt is null and p.archivedAt is null`,
    ),
  )
}

/** What stands about some plans, and about their cars as a whole, in the order it was written down. */
export function planEntries(
  tx: Tx,
  plans: readonly Pick<UpkeepPlan, 'id' | 'vehicleId'>[],
): Promise<PlanEntry[]> {
  const planIds = JSON.stringify(plans.map(plan => plan.id))
  const vehicleIds = JSON.stringify([...new Set(plans.map(plan => plan.vehicleId))])
  return read<PlanEntry>(
    tx,
    listOf(
      entryColumns,
      Prisma.sql`e.seq`,
      Prisma.sql`UpkeepEntry e where e.voidedAt is null and e.seq in (
        select o.seq from json_each(${planIds}) j cross join UpkeepEntry o on o.planId = j.value
        union all
        select c.seq from json_each(${vehicleIds}) j cross join UpkeepEntry c on c.vehicleId = j.value
        where c.planId is null
      )`,
    ),
  )
}

/** The titles of plans with the plates and owners' names of their cars, by plan. */
export async function planNames(
  tx: Tx,
  planIds: readonly string[],
): Promise<Map<string, { title: string; plate: string; customerName: string }>> {
  const rows = await read<{ id: string; title: string; plate: string; customerName: string }>(
    tx,
    listOf(
      Prisma.sql`'id', p.id, 'title', p.title, 'plate', v.plate, 'customerName', c.name`,
      Prisma.sql`p.id`,
      Prisma.sql`json_each(${JSON.stringify([...new Set(planIds)])}) j cross join UpkeepPlan p on p.id = j.value
        join Vehicle v on v.id = p.vehicleId join Customer c on c.id = v.customerId`,
    ),
  )
  return new Map(rows.map(({ id, ...row }) => [id, row]))
}

/**
 * The titles of plans alone, by plan: a third of the work where nobody is named. They come in the order of the ids, from
 * the index that holds nothing else; SQLite by itself would read each plan whole.
 */
export async function planTitles(tx: Tx, planIds: readonly string[]): Promise<Map<string, string>> {
  const ids = [...new Set(planIds)]
  const [row] = await tx.$queryRaw<{ list: string }[]>`
    select json_group_array((select title from UpkeepPlan indexed by UpkeepPlan_id_title_idx where id = j.value)) as list
    from json_each(${JSON.stringify(ids)}) j`
  const titles = JSON.parse(row?.list ?? '[]') as (string | null)[]
  return new Map(ids.flatMap((id, i) => (titles[i] == null ? [] : [[id, titles[i]]])))
}
