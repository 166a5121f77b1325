import {
  addDays,
  difference,
  intersection,
  minutesIn,
  type Span,
  spanSet,
  startOfDay,
} from '../../domain/calendar/index.ts'
import { problemOf } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Help } from '../../domain/schedule/index.ts'
import { meetsNeeds, needsKey, type SizeClass } from '../../domain/shop/index.ts'
import type { PlanKind } from '../../domain/upkeep/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import type { UpkeepRules } from './settings.ts'
import { treatmentFor } from './visitTreatment.ts'

export interface WeekRoom {
  /** Visits each week has room for beside what is booked. */
  readonly room: number[]
  /** How it was counted. */
  readonly words: string
}

/** Minutes of bay time a visit needs, by what it asks of the bay, and of people. */
interface Need {
  readonly bays: Map<string, number>
  readonly crewMin: number
}

/**
 * How many upkeep visits fit in each week from a day on, beside everything booked: the free opening hours of the
 * bays that can do each part of such a visit, and of the people, the scarcer of them, times the share the shop gives
 * to upkeep. An estimate for choosing weeks; the promise engine has the last word on every single time.
 */
export async function weekRoom(
  tx: Tx,
  rules: UpkeepRules,
  nowAt: number,
  zone: string,
  weeksOn: readonly string[],
  kinds: ReadonlyMap<PlanKind, number>,
): Promise<WeekRoom> {
  const starts = weeksOn.map(first => startOfDay(first, zone))
  const lastAt = starts.at(-1) ?? nowAt
  const endAt = addDays(lastAt, 7, zone)
  const floor = await loadFloor(tx, nowAt, endAt)
  const need = await meanNeed(tx, rules, kinds)
  const free = freeTimes(floor)
  const room = starts.map((from, i) => {
    const week = [{ from: Math.max(from, nowAt), to: starts[i + 1] ?? endAt }]
    const inWeek = (spans: readonly (readonly Span[])[]) =>
      spans.reduce((sum, each) => sum + minutesIn(intersection(each, week)), 0)
    const most = [...need.bays].map(
      ([needs, minutes]) =>
        inWeek(free.bays.filter(bay => meetsNeeds(bay.can, needs)).map(bay => bay.free)) / minutes,
    )
    return Math.max(0, Math.floor(Math.min(inWeek(free.crew) / need.crewMin, ...most) * rules.roomShare))
  })
  return {
    room,
    words: say(
      'Room is {roomShare} % of the hours that bays and people have free beside what is booked, at {crewMin} minutes of work a visit. An estimate: each time is checked when it is booked.',
      { roomShare: Math.round(rules.roomShare * 100), crewMin: Math.round(need.crewMin) },
    ),
  }
}

function freeTimes(floor: Floor) {
  const nothing = { id: '', release: floor.nowAt, asked: floor.nowAt, steps: [] }
  const planned = problemOf(floor, { job: nothing })
  const taken = Map.groupBy(planned.fixed, stay => stay.bay)
  return {
    bays: planned.bays.map(bay => ({
      can: bay.can,
      free: difference(floor.open, spanSet([...bay.closed, ...(taken.get(bay.id) ?? [])])),
    })),
    crew: planned.crew.map(person => difference(floor.open, person.away)),
  }
}

/** What a visit needs on average, over the kinds of visit that are due. */
async function meanNeed(tx: Tx, rules: UpkeepRules, kinds: ReadonlyMap<PlanKind, number>): Promise<Need> {
  const counts = kinds.size > 0 ? kinds : new Map([['topper' as const, 1]])
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0)
  const bays = new Map<string, number>()
  let crewMin = 0
  for (const [kind, count] of counts) {
    const { id } = await treatmentFor(tx, rules, kind)
    for (const step of await tx.treatmentStep.findMany({ where: { treatmentId: id } })) {
      const minutes = ((step.minutes as Record<SizeClass, number>).medium ?? 0) * (count / total)
      if (minutes === 0) continue
      const needs = needsKey(step.needs, step.asks as string[])
      bays.set(needs, (bays.get(needs) ?? 0) + minutes)
      const help = fromJson<Help | null>(step.help)
      crewMin += minutes * step.crew + (help ? help.crew * help.minutes * (count / total) : 0)
    }
  }
  return { bays, crewMin: Math.max(1, crewMin) }
}
