/** The spread that levels the year of visits: found beside the desk, then looked at, then carried out. */

import { weekNumber } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  type PlanKind,
  type SpreadResult,
  spreadInSteps,
  targetDay,
  visitKey,
  weekWishes,
} from '../../domain/upkeep/index.ts'
import { planNames } from '../../store/planRows.ts'
import type { Tx } from '../../store/store.ts'
import { besideDesk, ownPace, type Pace } from '../desk/beside.ts'
import type { Desk } from '../desk/desk.ts'
import { type ActView, type NewEntry, upkeepAct } from './acts.ts'
import { aimsOf } from './aims.ts'
import { eachLater, failedPlans, followDue, type KindDue, openVisits, refreshDue } from './planDue.ts'
import type { WeekRoom } from './room.ts'
import { roomOf, weekViews, type YearFrame, yearFrame } from './year.ts'

/** Weeks within which a visit whose window has closed is wanted. */
const overdueWeeks = 6

/** As many lines as anybody reads of what the spread would do. */
const mostShown = 200

interface DueYear {
  frame: YearFrame
  /** What is due within the year and not booked. */
  due: KindDue[]
  /** The day each is aimed at as things stand, by `visitKey`. */
  aimed: Map<string, string>
  /** Those whose day was agreed with the owner, by `visitKey`. */
  agreed: ReadonlySet<string>
  room: WeekRoom
}

/** Every visit of the year one by one, as the spread moves them; each plan's open visit is to be known already. */
async function dueYear(tx: Tx, nowAt: number): Promise<DueYear> {
  const frame = await yearFrame(tx, nowAt)
  const where = { until: frame.until, today: frame.day.today }
  const { aimed, agreed, booked } = await aimsOf(tx, nowAt)
  const listed = [...(await openVisits(tx, where)), ...(await eachLater(tx, frame.day, where))]
  const due = listed.filter(visit => !booked.has(visitKey(visit)))
  const kinds = new Map<PlanKind, number>()
  for (const { kind } of due) kinds.set(kind as PlanKind, (kinds.get(kind as PlanKind) ?? 0) + 1)
  return {
    frame,
    due,
    aimed: new Map(due.map(visit => [visitKey(visit), aimed.get(visitKey(visit))?.toDay ?? visit.dueOn])),
    agreed,
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

/**
 * A week for every visit at once; a day agreed with the owner is not touched, but takes its room. Null where it was
 * stopped.
 */
async function propose(tx: Tx, nowAt: number, pace: Pace): Promise<Proposed | null> {
  const year = await dueYear(tx, nowAt)
  const { frame, due, agreed } = year
  const { day, starts } = frame
  if (!(await pace.turn())) return null
  const plan = { beginsOn: starts[0] ?? day.today, weeks: starts.length, overdueWeeks }
  const free = [...year.room.room]
  for (const visit of due)
    if (agreed.has(visitKey(visit))) {
      const week = starts.findLastIndex(start => start <= visit.dueOn)
      if (week >= 0) free[week] = Math.max(0, (free[week] ?? 0) - 1)
    }
  const open = due.filter(visit => !agreed.has(visitKey(visit)))
  const byKey = new Map(open.map(visit => [visitKey(visit), visit]))
  const steps = spreadInSteps(weekWishes(open, plan, day.today), free)
  pace.total = open.length
  let step = steps.next()
  for (; !step.done; step = steps.next()) {
    pace.done = step.value
    if (!(await pace.turn())) return null
  }
  const result = step.value
  const target = new Map<string, string>()
  for (const { id, week } of result.placed) {
    const visit = byKey.get(id)
    const on = visit ? targetDay(visit, week, plan, day.today, day.isOpen) : null
    if (on !== null) target.set(id, on)
  }
  return { year, result, target }
}

export type SpreadView = NonNullable<Awaited<ReturnType<typeof previewSpread>>>

/**
 * The spread as it would be: what moves from where to where, what finds no week, and why. Changes nothing. Null where it
 * was stopped.
 */
export async function previewSpread(desk: Desk, pace: Pace = ownPace()) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { day: today } = await yearFrame(tx, nowAt)
  if ((await followDue(desk, today, Number.POSITIVE_INFINITY, pace)) > 0) return null
  const proposed = await propose(tx, nowAt, pace)
  if (!proposed) return null
  const { year, result, target } = proposed
  const { frame, due, aimed: before } = year
  const { day, starts } = frame
  const byKey = new Map(due.map(visit => [visitKey(visit), visit]))
  const moves = result.placed.flatMap(({ id, off }) => {
    const [visit, fromOn, toOn] = [byKey.get(id), before.get(id), target.get(id)]
    return visit && fromOn !== undefined && toOn !== undefined && toOn !== fromOn
      ? [{ visit, fromOn, toOn, off }]
      : []
  })
  const shown = moves.slice(0, mostShown)
  const left = result.left.slice(0, mostShown)
  const names = await planNames(tx, [
    ...shown.map(({ visit }) => visit.planId),
    ...left.flatMap(({ id }) => byKey.get(id)?.planId ?? []),
  ])
  return {
    today: day.today,
    roomWords: year.room.words,
    failed: await failedPlans(tx, day),
    weeks: weeksOf(year, new Map([...before, ...target])),
    /** How many are aimed at another day, shown or not. */
    moved: moves.length,
    /** `off`: weeks after (over 0) or before (under 0) the week it is due. */
    moves: shown.flatMap(({ visit: { planId, ruleOn, dueOn }, ...move }) => {
      const its = names.get(planId)
      return its ? [{ planId, ruleOn, dueOn, ...its, ...move }] : []
    }),
    /** How many find no week, shown or not. */
    leftOver: result.left.length,
    left: left.flatMap(({ id, because }) => {
      const visit = byKey.get(id)
      const its = visit && names.get(visit.planId)
      return its
        ? [{ planId: visit.planId, ruleOn: visit.ruleOn, title: its.title, plate: its.plate, because }]
        : []
    }),
    lateWeeks: result.lateWeeks,
    earlyWeeks: result.earlyWeeks,
    /** What stands in the way. */
    words: result.tight.map(({ weeks: full, room, wanted }) =>
      say('{full}: {wanted} visits can only come then, and there is room for {room}.', {
        full: full
          .map(week => say('week {week}', { week: weekNumber(starts[week] ?? day.today) }))
          .join(', '),
        wanted,
        room,
      }),
    ),
  }
}

const spreading = besideDesk<SpreadView | null>(() =>
  say('No week could be found for the visits; try it again.'),
)

/** Begins to find a week for every visit, and answers at once. */
export function beginSpread(desk: Desk): void {
  spreading.begin(desk.store, pace => previewSpread(desk, pace))
}

/** How far it is, or what it found. */
export function spreadStands(desk: Desk) {
  return spreading.stands(desk.store)
}

export function stopSpread(desk: Desk): Promise<void> {
  return spreading.stop(desk.store)
}

/** Aims every visit at its week; due days and windows stay as they are. */
export function applySpread(desk: Desk): Promise<ActView> {
  return upkeepAct(desk, async ({ tx, day }) => {
    while ((await refreshDue(tx, day)) > 0);
    const proposed = await propose(tx, day.nowAt, ownPace())
    const { year, target } =
      proposed ?? refuse('stopped', { spread: null }, say('It was stopped; try it again.'))
    const moved = year.due.filter(visit => {
      const toDay = target.get(visitKey(visit))
      return toDay !== undefined && toDay !== year.aimed.get(visitKey(visit))
    })
    const plans = await tx.upkeepPlan.findMany({
      where: { id: { in: [...new Set(moved.map(visit => visit.planId))] } },
      select: { id: true, vehicleId: true },
    })
    const vehicles = new Map(plans.map(plan => [plan.id, plan.vehicleId]))
    const entries = moved.flatMap(({ planId, ruleOn }): NewEntry[] => {
      const vehicleId = vehicles.get(planId)
      const toDay = target.get(visitKey({ planId, ruleOn }))
      return vehicleId && toDay ? [{ vehicleId, planId, what: 'aimed', ruleOn, toDay }] : []
    })
    if (entries.length === 0)
      refuse('nothing-to-do', { spread: null }, say('Every visit is aimed at its best week already.'))
    return { entries, words: say('{entries} visits aimed at other weeks', { entries: entries.length }) }
  })
}
