/** Due visits without reading every plan: each plan's open visit is kept as it was last worked out. */
import { type ListedDue, type StandingDue, standsThrough, visitsAfter } from '../../domain/upkeep/index.ts'
import {
  alikePlans,
  type OpenRow,
  type OpenWhere,
  openRows,
  overdueAimedRows,
  type PlanDueRow,
  plansAlike,
  saveDueRows,
  staleCount,
  stalePlans,
  unlikePlans,
} from '../../store/planDueRows.ts'
import type { Tx } from '../../store/store.ts'
import { ownPace } from '../desk/beside.ts'
import { act, type Desk } from '../desk/desk.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import type { UpkeepDay } from './visits.ts'
import { dueOf, type FailedPlanView, failedViews, workedOut } from './workedOut.ts'

/** Plans worked out in one piece, after which others come to their turn: a few hundredths of a second. */
const piece = 100

/** As many as a reader waits for: what the acts since the last look may have changed. */
const mostWaited = 2_000

/**
 * Works out the plans whose open visit is not known for the day any more, piece by piece. After an act that is a car's;
 * after a change of the shop's hours, or a migration, all of them, which is more than anybody should wait for: past
 * `most` it answers with how many there still are (0: none), and the host's timer does the rest.
 */
export async function followDue(
  desk: Desk,
  day: UpkeepDay,
  most = mostWaited,
  pace = ownPace(),
): Promise<number> {
  for (let done = 0; (await stalePlans(desk.store.read, day.today, 1)).length > 0; done += piece) {
    if (done >= most || !(await pace.turn())) return staleCount(desk.store.read, day.today)
    await act(desk, tx => refreshDue(tx, day))
  }
  return 0
}

/** One piece of it, or all within a transaction that is under way; how many plans were worked out. */
export async function refreshDue(tx: Tx, day: UpkeepDay, most = piece): Promise<number> {
  const planIds = await stalePlans(tx, day.today, most)
  if (planIds.length === 0) return 0
  const kept = new Map((await keptPlans(tx, { planIds })).map(each => [each.row.id, each]))
  const plans = await tx.upkeepPlan.findMany({
    where: { id: { in: planIds } },
    select: { id: true, vehicleId: true, kind: true, vehicle: { select: { customerId: true } } },
  })
  await saveDueRows(
    tx,
    plans.map(({ id, vehicleId, kind, vehicle: { customerId } }) => ({
      planId: id,
      vehicleId,
      customerId,
      kind,
      ...dueRow(kept.get(id), day),
    })),
  )
  return planIds.length
}

type DueFigures = Omit<PlanDueRow, 'planId' | 'vehicleId' | 'customerId' | 'kind'>

const nothing = { ruleOn: null, dueOn: null, firstOn: null, lastOn: null }

function dueRow(kept: KeptVisitPlan | undefined, day: UpkeepDay): DueFigures {
  const always = { ...nothing, throughOn: '9999-12-31', alike: null }
  if (!kept) return { ...always, inUse: false, failed: false }
  const found = workedOut(() => standsThrough(kept, day))
  if ('why' in found) return { ...always, inUse: true, failed: true }
  const { open, throughOn, alike }: StandingDue = found
  return { inUse: true, failed: false, throughOn, alike, ...(open ?? nothing) }
}

/** A listed visit with the kind of its plan. */
export type KindDue = ListedDue & { readonly kind: string }

/** Open visits as the due list has them, by due day and plan, the first so many. */
export async function openVisits(tx: Tx, where: OpenWhere, most?: number): Promise<KindDue[]> {
  return (await openRows(tx, where, most)).map(asListed)
}

/** Those past their day that are aimed at one to come. */
export async function overdueAimed(tx: Tx, day: UpkeepDay): Promise<KindDue[]> {
  return (await overdueAimedRows(tx, day.today)).map(asListed)
}

function asListed(row: OpenRow): KindDue {
  return { ...row, projected: false }
}

/** The visits after the open ones of plans that are alike. */
export interface LaterVisits {
  readonly kind: string
  /** How many plans they are. */
  readonly count: number
  /** Each plan's. */
  readonly visits: readonly Omit<ListedDue, 'planId'>[]
}

/** The visits after the open ones up to a day: worked out once for all plans that are alike. */
export async function laterVisits(tx: Tx, day: UpkeepDay, where: OpenWhere): Promise<LaterVisits[]> {
  const groups = await alikePlans(tx, where)
  const visits = visitsAfter(groups, { ...day, until: where.until })
  const alike = groups.map(({ kind, count }, i) => ({ kind, count, visits: visits[i] ?? [] }))
  const own = (await ownLater(tx, day, where)).map(({ kind, visit }) => ({ kind, count: 1, visits: [visit] }))
  return [...alike, ...own].filter(each => each.visits.length > 0)
}

/** The same visits one by one, each with its own plan. */
export async function eachLater(tx: Tx, day: UpkeepDay, where: OpenWhere): Promise<KindDue[]> {
  const groups = await plansAlike(tx, where)
  const visits = visitsAfter(
    groups.map(({ group }) => group),
    { ...day, until: where.until },
  )
  return [
    ...groups.flatMap(({ group: { kind }, planIds }, i) =>
      (visits[i] ?? []).flatMap(visit => planIds.map(planId => ({ ...visit, planId, kind }))),
    ),
    ...(await ownLater(tx, day, where)).map(({ kind, visit }) => ({ ...visit, kind })),
  ]
}

/** The later visits of plans that have their own. */
async function ownLater(tx: Tx, day: UpkeepDay, where: OpenWhere) {
  const planIds = await unlikePlans(tx, where)
  if (planIds.length === 0) return []
  const kept = await keptPlans(tx, { planIds })
  const kinds = new Map(kept.map(each => [each.row.id, each.plan.kind]))
  return dueOf(kept, { ...day, until: where.until })
    .due.filter(visit => visit.projected)
    .map(visit => ({ kind: kinds.get(visit.planId) ?? '', visit }))
}

/** By due day, then by plan. */
export function byDay(a: ListedDue, b: ListedDue): number {
  return a.dueOn < b.dueOn
    ? -1
    : a.dueOn > b.dueOn
      ? 1
      : a.planId < b.planId
        ? -1
        : Number(a.planId > b.planId)
}

/** The plans that cannot be worked out, with the reasons. */
export async function failedPlans(tx: Tx, day: UpkeepDay, vehicleId?: string): Promise<FailedPlanView[]> {
  const rows = await tx.planDue.findMany({
    where: { failed: true, inUse: true, ...(vehicleId !== undefined && { vehicleId }) },
    orderBy: { planId: 'asc' },
    take: 200,
  })
  if (rows.length === 0) return []
  const kept = await keptPlans(tx, { planIds: rows.map(row => row.planId) })
  return failedViews(tx, dueOf(kept, { ...day, until: day.today }).failed)
}
