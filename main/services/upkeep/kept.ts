/** What was written down about cars and their plans, as the upkeep domain reads it. */
import type { Absence, CarTimes, Plan, PlanKind, VisitRecord } from '../../domain/upkeep/index.ts'
import { allEntries, type PlanEntry, planEntries, planRows } from '../../store/planRows.ts'
import type { UpkeepPlan } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'

/** A plan with its records and car, and what upkeep adds to them. */
export interface KeptVisitPlan {
  readonly row: UpkeepPlan
  readonly plan: Plan
  readonly records: readonly VisitRecord[]
  readonly car: CarTimes
  /** The day each visit is aimed at, by the day the rule gave it. */
  readonly aimed: ReadonlyMap<string, string>
  /** The job each visit was booked as. */
  readonly booked: ReadonlyMap<string, string>
}

/** When cars cannot come, by vehicle; those that are always here have no entry. */
type Times = Map<string, { soldOn: string | null; away: Absence[] }>

const here: CarTimes = { soldOn: null, away: [] }

/**
 * The plans in use, of all cars or of some; those of archived cars and customers are left out. Each is read together
 * with everything that stands about it: what was taken back does not count.
 */
export async function keptPlans(
  tx: Tx,
  where: { vehicleId?: string; planIds?: string[] } = {},
): Promise<KeptVisitPlan[]> {
  const plans = await planRows(tx, where)
  const some = where.planIds !== undefined || where.vehicleId !== undefined
  const entries = await (some ? planEntries(tx, plans) : allEntries(tx))
  const times = timesOf(entries)
  const byPlan = Map.groupBy(entries, entry => entry.planId ?? '')
  return plans.map(row => keptPlan(row, byPlan.get(row.id) ?? [], times.get(row.vehicleId) ?? here))
}

function timesOf(
  entries: readonly Pick<PlanEntry, 'vehicleId' | 'what' | 'onDay' | 'toDay' | 'why'>[],
): Times {
  const times: Times = new Map()
  for (const { vehicleId, what, onDay, toDay, why } of entries) {
    if ((what !== 'away' && what !== 'sold') || onDay === null) continue
    const known = times.get(vehicleId) ?? { soldOn: null, away: [] }
    times.set(vehicleId, known)
    if (what === 'sold') known.soldOn = onDay
    else if (toDay !== null) known.away.push({ from: onDay, to: toDay, ...(why !== '' && { why }) })
  }
  return times
}

/** When one car cannot come. */
export async function carTimes(tx: Tx, vehicleId: string): Promise<CarTimes> {
  const entries = await tx.upkeepEntry.findMany({
    where: { vehicleId, what: { in: ['away', 'sold'] }, voidedAt: null },
    orderBy: { seq: 'asc' },
  })
  return timesOf(entries).get(vehicleId) ?? here
}

function keptPlan(row: UpkeepPlan, entries: readonly PlanEntry[], car: CarTimes): KeptVisitPlan {
  const aimed = new Map<string, string>()
  const booked = new Map<string, string>()
  const records: VisitRecord[] = []
  let { rule } = row
  for (const entry of entries) {
    const { what, ruleOn, onDay, toDay, jobId } = entry
    const why = entry.why === '' ? {} : { why: entry.why }
    if (what === 'done' && onDay !== null) records.push({ what, on: onDay, dueOn: ruleOn })
    else if (what === 'rule' && entry.rule !== null) rule = entry.rule
    if (ruleOn === null) continue
    if (what === 'skipped') records.push({ what, dueOn: ruleOn, ...why })
    else if (what === 'moved' && toDay !== null) {
      records.push({ what, dueOn: ruleOn, to: toDay, ...why })
      // A day agreed with the owner ends what the spread had aimed at.
      aimed.delete(ruleOn)
    } else if (what === 'aimed' && toDay !== null) aimed.set(ruleOn, toDay)
    else if (what === 'booked' && jobId !== null) booked.set(ruleOn, jobId)
  }
  return { row, plan: planOf(row, rule), records, car, aimed, booked }
}

/** A stored plan as the domain reads it, under the rule it has by now. */
function planOf(row: UpkeepPlan, rule: string): Plan {
  return {
    id: row.id,
    kind: row.kind as PlanKind,
    title: row.title,
    rule,
    anchor:
      row.anchorTo === 'date'
        ? { to: 'date', on: row.anchorOn }
        : { to: 'last-done', since: row.anchorOn, event: row.anchorEvent },
    earlyDays: row.earlyDays,
    lateDays: row.lateDays,
  }
}

/** Whether the shop is open on a day at all: by its exceptions, else by its week. */
export async function openDays(tx: Tx): Promise<(date: string) => boolean> {
  const { weekly } = await shopOf(tx)
  const exceptions = new Map(
    (await tx.hoursException.findMany()).map(({ date, hours }) => [date, (hours as unknown[]).length > 0]),
  )
  const weekdays = new Set(weekly.map(each => each.weekday))
  const ordinary = (date: string) => weekdays.has(Temporal.PlainDate.from(date).dayOfWeek)
  return date => exceptions.get(date) ?? (weekdays.size === 0 || ordinary(date))
}
