/** The year of visits as a picture, and the spread that levels it. */
import { isoWeek } from '../../domain/calendar/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  type ListedDue,
  type SpreadResult,
  spread,
  targetDay,
  visitKey,
  weekWishes,
} from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type ActView, type NewEntry, upkeepAct } from './acts.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import { weekRoom } from './room.ts'
import { upkeepRules } from './settings.ts'
import { bookingsOf, type UpkeepDay, upkeepDay, visitViews } from './visits.ts'
import { dueOf, type FailedPlanView, failedViews } from './workedOut.ts'

const weeks = 52
/** Weeks within which a visit whose window has closed is wanted. */
const overdueWeeks = 6

interface DueYear {
  day: UpkeepDay
  kept: KeptVisitPlan[]
  /** What is due within the year and not booked. */
  due: ListedDue[]
  failed: FailedPlanView[]
  mondays: string[]
  room: number[]
  roomWords: string
}

async function dueYear(tx: Tx, nowAt: number): Promise<DueYear> {
  const day = await upkeepDay(tx, nowAt)
  const today = Temporal.PlainDate.from(day.today)
  const monday = today.subtract({ days: today.dayOfWeek - 1 })
  const mondays = Array.from({ length: weeks }, (_, i) => monday.add({ weeks: i }).toString())
  const until = monday.add({ days: 7 * weeks - 1 }).toString()
  const kept = await keptPlans(tx)
  const bookings = await bookingsOf(tx, nowAt, kept)
  const booked = new Set(
    kept.flatMap(each =>
      [...each.booked].flatMap(([ruleOn, jobId]) =>
        bookings.has(jobId) ? [visitKey({ planId: each.row.id, ruleOn })] : [],
      ),
    ),
  )
  const found = dueOf(kept, { ...day, until })
  const due = found.due.filter(visit => !booked.has(visitKey(visit)))
  const kinds = new Map(kept.map(each => [each.row.id, each.plan.kind]))
  const { room, words } = await weekRoom(
    tx,
    await upkeepRules(tx),
    nowAt,
    day.zone,
    mondays,
    due.flatMap(visit => kinds.get(visit.planId) ?? []),
  )
  return { day, kept, due, failed: await failedViews(tx, found.failed), mondays, room, roomWords: words }
}

/** The weeks from this one on: what falls due in each, what is aimed at each, and the room there is. */
export async function upkeepYear(desk: Desk) {
  const year = await dueYear(desk.store.read, desk.now())
  const { day, roomWords, failed } = year
  return { today: day.today, roomWords, failed, weeks: weekViews(year, aimedOn(year)) }
}

/** The day each visit is aimed at as things stand. */
function aimedOn({ kept, due }: DueYear): Map<string, string> {
  const byPlan = new Map(kept.map(each => [each.row.id, each]))
  return new Map(
    due.map(visit => [visitKey(visit), byPlan.get(visit.planId)?.aimed.get(visit.ruleOn) ?? visit.dueOn]),
  )
}

export type WeekView = ReturnType<typeof weekViews>[number]

function weekViews(year: DueYear, aimed: ReadonlyMap<string, string>) {
  const { due, mondays, room } = year
  const views = mondays.map((mondayOn, i) => ({
    mondayOn,
    week: isoWeek(mondayOn).isoWeek,
    /** Visits if each came when due (in the first week: and all that is overdue). */
    asDue: 0,
    /** Visits as aimed at. */
    planned: 0,
    /** How many visits there is room for beside what is booked. */
    room: room[i] ?? 0,
  }))
  // What is overdue counts in the first week.
  const weekOf = (date: string) => views.findLast(view => view.mondayOn <= date) ?? views[0]
  for (const visit of due) {
    const dueIn = weekOf(visit.dueOn)
    const aimedIn = weekOf(aimed.get(visitKey(visit)) ?? visit.dueOn)
    if (dueIn) dueIn.asDue++
    if (aimedIn) aimedIn.planned++
  }
  return views
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
  const { day, kept, due, mondays, room } = year
  const agreed = new Set(
    kept.flatMap(each =>
      each.records.flatMap(record =>
        record.what === 'moved' ? [visitKey({ planId: each.row.id, ruleOn: record.dueOn })] : [],
      ),
    ),
  )
  const plan = { mondayOn: mondays[0] ?? day.today, weeks, overdueWeeks }
  const free = [...room]
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
  const { day, kept, due, failed, roomWords, mondays } = year
  const before = aimedOn(year)
  const views = new Map((await visitViews(tx, day, kept, due)).map(view => [view.key, view]))
  return {
    today: day.today,
    roomWords,
    failed,
    weeks: weekViews(year, new Map([...before, ...target])),
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

/** Aims every visit at its week; due days and windows stay as they are. */
export function applySpread(desk: Desk): Promise<ActView> {
  return upkeepAct(desk, async ({ tx, day }) => {
    const { year, target } = await propose(tx, day.nowAt)
    const before = aimedOn(year)
    const vehicles = new Map(year.kept.map(each => [each.row.id, each.row.vehicleId]))
    const entries = year.due.flatMap((visit): NewEntry[] => {
      const toDay = target.get(visitKey(visit))
      const { planId, ruleOn } = visit
      const vehicleId = vehicles.get(planId)
      if (!vehicleId || toDay === undefined || toDay === before.get(visitKey(visit))) return []
      return [{ vehicleId, planId, what: 'aimed', ruleOn, toDay }]
    })
    if (entries.length === 0)
      refuse('nothing-to-do', { spread: null }, 'Every visit is aimed at its best week already.')
    return { entries, words: `${entries.length} visits aimed at other weeks` }
  })
}
