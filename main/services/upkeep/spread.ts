/** The spread that levels the year of visits. */
import { isoWeek } from '../../domain/calendar/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  type ListedDue,
  type PlanKind,
  type SpreadResult,
  spread,
  targetDay,
  visitKey,
  weekWishes,
} from '../../domain/upkeep/index.ts'
import { carOwners } from '../../store/planRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type ActView, type NewEntry, upkeepAct } from './acts.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import type { WeekRoom } from './room.ts'
import { type FailedPlanView, failedViews } from './workedOut.ts'
import { aimedOn, openYear, roomOf, weekViews, type YearFrame, yearFrame } from './year.ts'

/** Weeks within which a visit whose window has closed is wanted. */
const overdueWeeks = 6

interface DueYear {
  frame: YearFrame
  kept: KeptVisitPlan[]
  /** What is due within the year and not booked. */
  due: ListedDue[]
  /** The day each is aimed at as things stand, by `visitKey`. */
  aimed: Map<string, string>
  failed: FailedPlanView[]
  room: WeekRoom
}

/** Every visit of the year one by one, as the spread moves them. */
async function dueYear(tx: Tx, nowAt: number): Promise<DueYear> {
  const frame = await yearFrame(tx, nowAt)
  const kept = await keptPlans(tx)
  const { due, failed } = await openYear(tx, frame, kept)
  const byPlan = new Map(kept.map(each => [each.row.id, each]))
  const kinds = new Map<PlanKind, number>()
  for (const { planId } of due) {
    const kind = byPlan.get(planId)?.plan.kind
    if (kind) kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
  }
  return {
    frame,
    kept,
    due,
    aimed: new Map(due.map(visit => [visitKey(visit), aimedOn(byPlan, visit)])),
    failed: await failedViews(tx, failed),
    room: await roomOf(tx, frame, kinds),
  }
}

function weeksOf({ frame, due, room }: DueYear, aimed: ReadonlyMap<string, string>) {
  return weekViews(
    frame,
    due.map(visit => ({ dueOn: visit.dueOn, aimedOn: aimed.get(visitKey(visit)) ?? visit.dueOn, count: 1 })),
    room,
  )
}

interface Proposed {
  year: DueYear
  result: SpreadResult
  /** The day each placed visit would be aimed at. */
  target: Map<string, string>
}

/** A week for every visit at once; a day agreed with the owner is not touched, but takes its room. */
async function propose(tx: Tx, nowAt: number): Promise<Proposed> {
  const year = await dueYear(tx, nowAt)
  const { frame, kept, due } = year
  const { day, mondays } = frame
  const agreed = new Set(
    kept.flatMap(each =>
      each.records.flatMap(record =>
        record.what === 'moved' ? [visitKey({ planId: each.row.id, ruleOn: record.dueOn })] : [],
      ),
    ),
  )
  const plan = { mondayOn: mondays[0] ?? day.today, weeks: mondays.length, overdueWeeks }
  const free = [...year.room.room]
  for (const visit of due)
    if (agreed.has(visitKey(visit))) {
      const week = mondays.findLastIndex(monday => monday <= visit.dueOn)
      if (week >= 0) free[week] = Math.max(0, (free[week] ?? 0) - 1)
    }
  const open = due.filter(visit => !agreed.has(visitKey(visit)))
  const byKey = new Map(open.map(visit => [visitKey(visit), visit]))
  const result = spread(weekWishes(open, plan, day.today), free)
  const target = new Map<string, string>()
  for (const { id, week } of result.placed) {
    const visit = byKey.get(id)
    const on = visit ? targetDay(visit, week, plan, day.today, day.isOpen) : null
    if (on !== null) target.set(id, on)
  }
  return { year, result, target }
}

export type SpreadView = Awaited<ReturnType<typeof previewSpread>>

/** The spread as it would be: what moves from where to where, what finds no week, and why. Changes nothing. */
export async function previewSpread(desk: Desk) {
  const tx = desk.store.read
  const { year, result, target } = await propose(tx, desk.now())
  const { frame, kept, due, failed, aimed: before } = year
  const { day, mondays } = frame
  const views = await namesOf(tx, kept, due)
  return {
    today: day.today,
    roomWords: year.room.words,
    failed,
    weeks: weeksOf(year, new Map([...before, ...target])),
    /** `off`: weeks after (over 0) or before (under 0) the week it is due. */
    moves: result.placed.flatMap(({ id, off }) => {
      const [view, fromOn, toOn] = [views.get(id), before.get(id), target.get(id)]
      if (!view || fromOn === undefined || toOn === undefined || toOn === fromOn) return []
      const { planId, ruleOn, title, plate, customerName, dueOn } = view
      return { planId, ruleOn, title, plate, customerName, dueOn, fromOn, toOn, off }
    }),
    left: result.left.flatMap(({ id, because }) => {
      const view = views.get(id)
      return view
        ? { planId: view.planId, ruleOn: view.ruleOn, title: view.title, plate: view.plate, because }
        : []
    }),
    lateWeeks: result.lateWeeks,
    earlyWeeks: result.earlyWeeks,
    /** What stands in the way. */
    words: result.tight.map(
      ({ weeks: full, room, wanted }) =>
        `${full.map(week => `week ${isoWeek(mondays[week] ?? day.today).isoWeek}`).join(', ')}: ${wanted} visits can only come ` +
        `then, and there is room for ${room}.`,
    ),
  }
}

/** What a list says of visits, by `visitKey`. */
async function namesOf(tx: Tx, kept: readonly KeptVisitPlan[], due: readonly ListedDue[]) {
  const byPlan = new Map(kept.map(each => [each.row.id, each]))
  const owners = await carOwners(
    tx,
    kept.map(each => each.row.vehicleId),
  )
  return new Map(
    due.flatMap(({ planId, ruleOn, dueOn }) => {
      const its = byPlan.get(planId)
      const owner = its && owners.get(its.row.vehicleId)
      if (!owner) return []
      return [[visitKey({ planId, ruleOn }), { planId, ruleOn, dueOn, title: its.plan.title, ...owner }]]
    }),
  )
}

/** Aims every visit at its week; due days and windows stay as they are. */
export function applySpread(desk: Desk): Promise<ActView> {
  return upkeepAct(desk, async ({ tx, day }) => {
    const { year, target } = await propose(tx, day.nowAt)
    const vehicles = new Map(year.kept.map(each => [each.row.id, each.row.vehicleId]))
    const entries = year.due.flatMap((visit): NewEntry[] => {
      const toDay = target.get(visitKey(visit))
      const { planId, ruleOn } = visit
      const vehicleId = vehicles.get(planId)
      if (!vehicleId || toDay === undefined || toDay === year.aimed.get(visitKey(visit))) return []
      return [{ vehicleId, planId, what: 'aimed', ruleOn, toDay }]
    })
    if (entries.length === 0)
      refuse('nothing-to-do', { spread: null }, 'Every visit is aimed at its best week already.')
    return { entries, words: `${entries.length} visits aimed at other weeks` }
  })
}
