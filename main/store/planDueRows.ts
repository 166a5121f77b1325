/** The open visits of all plans as they were last worked out (`PlanDue`), asked so that only what is wanted is read. */
import { dateOfDay, dayNumber } from '../domain/calendar/index.ts'
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** What is kept of a plan that was worked out. */
export interface PlanDueRow {
  planId: string
  vehicleId: string
  customerId: string
  kind: string
  throughOn: string
  inUse: boolean
  failed: boolean
  ruleOn: string | null
  dueOn: string | null
  firstOn: string | null
  lastOn: string | null
  alike: string | null
}

export async function saveDueRows(tx: Tx, rows: readonly PlanDueRow[]): Promise<void> {
  const list = rows.map(row => [
    row.planId,
    row.vehicleId,
    row.customerId,
    row.kind,
    row.throughOn,
    Number(row.inUse),
    Number(row.failed),
    row.ruleOn,
    row.dueOn,
    row.firstOn,
    row.lastOn,
    row.alike,
  ])
  await tx.$executeRaw`
    insert or replace into PlanDue (planId, vehicleId, customerId, kind, throughOn, inUse, failed, ruleOn, dueOn, firstOn,
      lastOn, alike)
    select value ->> 0, value ->> 1, value ->> 2, value ->> 3, value ->> 4, value ->> 5, value ->> 6, value ->> 7,
      value ->> 8, value ->> 9, value ->> 10, value ->> 11
    from json_each(${JSON.stringify(list)})`
}

/** Which open visits; days are inclusive. */
export interface OpenWhere {
  readonly until: string
  readonly vehicleId?: string | undefined
  readonly kinds?: readonly string[] | undefined
  readonly from?: string | undefined
  /** Those before `from` too that are overdue on `today`. */
  readonly orOverdue?: boolean
  readonly today: string
  readonly states?: readonly string[] | undefined
  /** Plans left out. */
  readonly except?: readonly string[] | undefined
}

/** `DueQuestion`'s own figure. */
const soonDays = 30

export interface OpenRow {
  planId: string
  kind: string
  state: 'later' | 'soon' | 'due' | 'overdue'
  ruleOn: string
  dueOn: string
  firstOn: string
  lastOn: string
}

/** The state of a visit on a day, as `DueState` has it: the window decides. */
function stateOn(today: string): Prisma.Sql {
  const soonUntil = dateOfDay(dayNumber(today) + soonDays)
  return Prisma.sql`case when ${today} > lastOn then 'overdue' when ${today} >= firstOn then 'due'
    when firstOn <= ${soonUntil} then 'soon' else 'later' end`
}

function open({ until, vehicleId, kinds, from, orOverdue, today, states, except }: OpenWhere): Prisma.Sql {
  const each = [
    Prisma.sql`inUse = 1 and dueOn <= ${until}`,
    ...(from === undefined
      ? []
      : [orOverdue ? Prisma.sql`(dueOn >= ${from} or dueOn < ${today})` : Prisma.sql`dueOn >= ${from}`]),
    ...(vehicleId === undefined ? [] : [Prisma.sql`vehicleId = ${vehicleId}`]),
    ...(kinds?.length ? [Prisma.sql`kind in (${Prisma.join([...kinds])})`] : []),
    ...(except?.length
      ? [Prisma.sql`planId not in (select value from json_each(${JSON.stringify(except)}))`]
      : []),
    ...(states?.length ? [Prisma.sql`${stateOn(today)} in (${Prisma.join([...states])})`] : []),
  ]
  return Prisma.join(each, ' and ')
}

/** Open visits by due day and plan, the first so many of them; all come in one piece. */
export async function openRows(tx: Tx, where: OpenWhere, most = -1): Promise<OpenRow[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>`
    select json_group_array(json_array(planId, kind, state, ruleOn, dueOn, firstOn, lastOn)) as list from (
      select planId, kind, ${stateOn(where.today)} as state, ruleOn, dueOn, firstOn, lastOn from PlanDue
      where ${open(where)} order by dueOn, planId limit ${most}
    )`
  type Listed = [string, string, OpenRow['state'], string, string, string, string]
  return (JSON.parse(row?.list ?? '[]') as Listed[]).map(
    ([planId, kind, state, ruleOn, dueOn, firstOn, lastOn]) => ({
      planId,
      kind,
      state,
      ruleOn,
      dueOn,
      firstOn,
      lastOn,
    }),
  )
}

/** An open visit with what the last reminder to its present owner, if any, says of the next. */
export interface RemindRow {
  planId: string
  ruleOn: string
  dueOn: string
  customerId: string
  reminder: {
    state: string
    outcome: string | null
    tryNo: number
    sentAt: number | null
    nextTryOn: string | null
  } | null
}

/**
 * Open visits up to a day that have had a reminder, or are due or aimed at `leadOn` at the latest, by due day and plan;
 * `aimed`: the plans whose visit is aimed at a day of its own. Tens of thousands of them come in one piece.
 */
export async function remindRows(
  tx: Tx,
  { until, leadOn, aimed }: { until: string; leadOn: string; aimed: readonly string[] },
): Promise<RemindRow[]> {
  const [row] = await tx.$queryRaw<{ list: string }[]>`
    select json_group_array(json_array(planId, ruleOn, dueOn, customerId, state, outcome, tryNo, sentAt, nextTryOn)) as list
    from (
      select d.planId, d.ruleOn, d.dueOn, d.customerId, m.state, m.outcome, m.tryNo, m.sentAt, m.nextTryOn
      from PlanDue d left join Message m on m.id = (
        select l.id from Message l where l.planId = d.planId and l.ruleOn = d.ruleOn and l.customerId = d.customerId
        order by l.tryNo desc, l.id desc limit 1
      )
      where d.inUse = 1 and d.dueOn <= ${until} and (
        m.id is not null or d.dueOn <= ${leadOn} or d.planId in (select value from json_each(${JSON.stringify(aimed)}))
      )
      order by d.dueOn, d.planId
    )`
  type Listed = [
    string,
    string,
    string,
    string,
    string | null,
    string | null,
    number,
    number | null,
    string | null,
  ]
  return (JSON.parse(row?.list ?? '[]') as Listed[]).map(
    ([planId, ruleOn, dueOn, customerId, state, outcome, tryNo, sentAt, nextTryOn]) => ({
      planId,
      ruleOn,
      dueOn,
      customerId,
      reminder: state === null ? null : { state, outcome, tryNo, sentAt, nextTryOn },
    }),
  )
}

/** What was written down about where visits that are open or come later are aimed, and as which job they were booked, in order. */
export function aimRows(tx: Tx) {
  return tx.$queryRaw<
    { planId: string; ruleOn: string; what: string; toDay: string | null; jobId: string | null }[]
  >`
    select e.planId, e.ruleOn, e.what, e.toDay, e.jobId
    from UpkeepEntry e cross join PlanDue d on d.planId = e.planId and d.ruleOn <= e.ruleOn
    where e.what in ('aimed', 'moved', 'booked') and e.voidedAt is null order by e.seq`
}

/** Open visits past their day that are aimed at one to come: few are aimed, so they are looked for from there. */
export function overdueAimedRows(tx: Tx, today: string): Promise<OpenRow[]> {
  return tx.$queryRaw<OpenRow[]>`
    select d.planId, kind, ${stateOn(today)} as state, d.ruleOn, dueOn, firstOn, lastOn
    from (
      select distinct planId, ruleOn from UpkeepEntry
      where what = 'aimed' and voidedAt is null and toDay >= ${today}
    ) e cross join PlanDue d on d.planId = e.planId and d.ruleOn = e.ruleOn
    where ${open({ today, until: today })} and dueOn < ${today}`
}

/** How many open visits there are in each state. */
export async function openCounts(tx: Tx, where: OpenWhere): Promise<Map<string, number>> {
  const rows = await tx.$queryRaw<{ state: string; count: bigint }[]>`
    select ${stateOn(where.today)} as state, count(*) as count from PlanDue
    where ${open(where)} group by state`
  return new Map(rows.map(({ state, count }) => [state, Number(count)]))
}

/** Open visits counted by kind and due day, all that are overdue under one day of theirs. */
export async function openByDay(tx: Tx, where: OpenWhere) {
  const rows = await tx.$queryRaw<{ kind: string; dueOn: string; count: bigint }[]>`
    select kind, min(dueOn) as dueOn, count(*) as count from PlanDue where ${open(where)}
    group by kind, case when dueOn < ${where.today} then '' else dueOn end`
  return rows.map(({ count, ...row }) => ({ ...row, count: Number(count) }))
}

/** Plans that have their open visit, or one after it, booked or aimed at a day of its own. */
export async function bookedOrAimed(tx: Tx): Promise<string[]> {
  const rows = await tx.$queryRaw<{ planId: string }[]>`
    select distinct +e.planId as planId from UpkeepEntry e join PlanDue d on d.planId = e.planId
    where e.what in ('booked', 'aimed') and e.voidedAt is null and e.ruleOn >= d.ruleOn`
  return rows.map(row => row.planId)
}

/** Plans with the same visits after their open one; of those days, all that the later ones follow from. */
export interface AlikePlans {
  kind: string
  count: number
  alike: string
  dueOn: string
  ruleOn: string
}

/** What plans share that have the same visits after their open one, as the domain's `StandingDue` says it. */
function likeness(today: string): Prisma.Sql {
  return Prisma.sql`alike, kind, case when alike like 'last-done%' then max(dueOn, ${today}) else ruleOn end as dueFrom,
    case when alike like 'last-done%' then max(dueOn, ruleOn, ${today}) else ruleOn end as ruleFrom`
}

/** Plans that may have visits after an open one up to a day; of the whole shop they are read from the index alone. */
function followed({ until, today, vehicleId, except }: OpenWhere): Prisma.Sql {
  const index =
    vehicleId === undefined
      ? Prisma.sql`indexed by PlanDue_inUse_alike_dueOn_ruleOn_kind_planId_idx`
      : Prisma.empty
  return Prisma.sql`PlanDue ${index} where ${open({ until, today, vehicleId, except })} and alike > ''`
}

/** Such plans, those alike together: first as the index has them, so that few are left to be put together. */
export async function alikePlans(tx: Tx, where: OpenWhere): Promise<AlikePlans[]> {
  const rows = await tx.$queryRaw<(Omit<AlikePlans, 'count'> & { count: bigint })[]>`
    select alike, kind, dueFrom as dueOn, ruleFrom as ruleOn, sum(plans) as count from (
      select ${likeness(where.today)}, plans from (
        select alike, dueOn, ruleOn, kind, count(*) as plans from ${followed(where)} group by alike, dueOn, ruleOn, kind
      )
    ) group by 1, 2, 3, 4`
  return rows.map(({ count, ...row }) => ({ ...row, count: Number(count) }))
}

/** Which plans each such group is made of. */
export async function plansAlike(
  tx: Tx,
  where: OpenWhere,
): Promise<{ group: AlikePlans; planIds: string[] }[]> {
  const rows = await tx.$queryRaw<(Omit<AlikePlans, 'count'> & { planIds: string })[]>`
    select alike, kind, dueFrom as dueOn, ruleFrom as ruleOn, json_group_array(planId) as planIds
    from (select ${likeness(where.today)}, planId from ${followed(where)}) group by 1, 2, 3, 4`
  return rows.map(({ planIds: list, ...row }) => {
    const planIds = JSON.parse(list) as string[]
    return { group: { ...row, count: planIds.length }, planIds }
  })
}

/** Plans that may have visits of their own after an open one up to a day: these are good for today alone. */
export async function unlikePlans(tx: Tx, { until, today, vehicleId, except }: OpenWhere): Promise<string[]> {
  const rows = await tx.$queryRaw<{ planId: string }[]>`
    select planId from PlanDue indexed by PlanDue_throughOn_idx
    where throughOn = ${today} and alike is null and ${open({ until, today, vehicleId, except })}`
  return rows.map(row => row.planId)
}

/** Plans to be worked out again, the first so many. */
export async function stalePlans(tx: Tx, today: string, most: number): Promise<string[]> {
  const rows = await tx.planDue.findMany({
    where: { throughOn: { lt: today } },
    select: { planId: true },
    take: most,
  })
  return rows.map(row => row.planId)
}

/** How many there are. */
export function staleCount(tx: Tx, today: string): Promise<number> {
  return tx.planDue.count({ where: { throughOn: { lt: today } } })
}
