/** The year of visits as a picture: counted, not listed. */
import { weekNumber, weekStart } from '../../domain/calendar/index.ts'
import { weekBeginsNow } from '../../domain/language/index.ts'
import { type ListedDue, type PlanKind, visitKey } from '../../domain/upkeep/index.ts'
import { bookedOrAimed, openByDay } from '../../store/planDueRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type KeptVisitPlan, keptPlans } from './kept.ts'
import { failedPlans, followDue, laterVisits } from './planDue.ts'
import { type WeekRoom, weekRoom } from './room.ts'
import { upkeepRules } from './settings.ts'
import { bookingsOf, type UpkeepDay, upkeepDay } from './visits.ts'
import { dueOf } from './workedOut.ts'

const weeks = 52

export interface YearFrame {
  readonly day: UpkeepDay
  /** The first day of each week, as the shop begins them. */
  readonly starts: readonly string[]
  /** The last day of the last. */
  readonly until: string
}

export async function yearFrame(tx: Tx, nowAt: number): Promise<YearFrame> {
  const day = await upkeepDay(tx, nowAt)
  const first = Temporal.PlainDate.from(weekStart(day.today, weekBeginsNow()))
  return {
    day,
    starts: Array.from({ length: weeks }, (_, i) => first.add({ weeks: i }).toString()),
    until: first.add({ days: 7 * weeks - 1 }).toString(),
  }
}

/** The visits of some plans within the year that are not booked, and the plans that cannot be worked out. */
export async function openYear(tx: Tx, { day, until }: YearFrame, kept: readonly KeptVisitPlan[]) {
  const bookings = await bookingsOf(tx, day.nowAt, kept)
  const booked = new Set(
    kept.flatMap(each =>
      [...each.booked].flatMap(([ruleOn, jobId]) =>
        bookings.has(jobId) ? [visitKey({ planId: each.row.id, ruleOn })] : [],
      ),
    ),
  )
  const { due, failed } = dueOf(kept, { ...day, until })
  return { due: due.filter(visit => !booked.has(visitKey(visit))), failed }
}

/** The day a visit is aimed at as things stand. */
export function aimedOn(byPlan: ReadonlyMap<string, KeptVisitPlan>, visit: ListedDue): string {
  return byPlan.get(visit.planId)?.aimed.get(visit.ruleOn) ?? visit.dueOn
}

export async function roomOf(
  tx: Tx,
  { day, starts }: YearFrame,
  kinds: ReadonlyMap<PlanKind, number>,
): Promise<WeekRoom> {
  return weekRoom(tx, await upkeepRules(tx), day.nowAt, day.zone, starts, kinds)
}

interface Counted {
  readonly dueOn: string
  readonly aimedOn: string
  readonly count: number
}

export type WeekView = ReturnType<typeof weekViews>[number]

export function weekViews({ starts }: YearFrame, visits: readonly Counted[], { room }: WeekRoom) {
  const views = starts.map((beginsOn, i) => ({
    beginsOn,
    week: weekNumber(beginsOn),
    /** Visits if each came when due (in the first week: and all that is overdue). */
    asDue: 0,
    /** Visits as aimed at. */
    planned: 0,
    /** How many visits there is room for beside what is booked. */
    room: room[i] ?? 0,
  }))
  // What is overdue counts in the first week.
  const known = new Map<string, (typeof views)[number] | undefined>()
  const weekOf = (date: string) => {
    if (!known.has(date)) known.set(date, views.findLast(view => view.beginsOn <= date) ?? views[0])
    return known.get(date)
  }
  for (const { dueOn, aimedOn, count } of visits) {
    const [dueIn, aimedIn] = [weekOf(dueOn), weekOf(aimedOn)]
    if (dueIn) dueIn.asDue += count
    if (aimedIn) aimedIn.planned += count
  }
  return views
}

/** The weeks from this one on: what falls due in each, what is aimed at each, and the room there is. */
export async function upkeepYear(desk: Desk) {
  const tx = desk.store.read
  const frame = await yearFrame(tx, desk.now())
  const behind = await followDue(desk, frame.day)
  const visits = await countedYear(tx, frame)
  const kinds = new Map<PlanKind, number>()
  for (const { kind, count } of visits) kinds.set(kind, (kinds.get(kind) ?? 0) + count)
  const room = await roomOf(tx, frame, kinds)
  return {
    today: frame.day.today,
    /** How many plans are still as they were worked out before what changed since. */
    behind,
    roomWords: room.words,
    failed: await failedPlans(tx, frame.day),
    weeks: weekViews(frame, visits, room),
  }
}

/** The year's visits: one by one where some are booked or aimed at, all others by kind and day. */
async function countedYear(tx: Tx, frame: YearFrame): Promise<(Counted & { kind: PlanKind })[]> {
  const { day, until } = frame
  const except = await bookedOrAimed(tx)
  const own = await keptPlans(tx, { planIds: except })
  const byPlan = new Map(own.map(each => [each.row.id, each]))
  const where = { until, today: day.today, except }
  const counted = (kind: string, dueOn: string, count: number, aimed = dueOn) => ({
    kind: kind as PlanKind,
    dueOn,
    aimedOn: aimed,
    count,
  })
  return [
    ...(await openYear(tx, frame, own)).due.map(visit =>
      counted(byPlan.get(visit.planId)?.plan.kind ?? '', visit.dueOn, 1, aimedOn(byPlan, visit)),
    ),
    ...(await openByDay(tx, where)).map(({ kind, dueOn, count }) => counted(kind, dueOn, count)),
    ...(await laterVisits(tx, day, where)).flatMap(({ kind, count, visits }) =>
      visits.map(({ dueOn }) => counted(kind, dueOn, count)),
    ),
  ]
}
