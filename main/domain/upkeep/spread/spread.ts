import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { type TightWeeks, WeekFlow } from './weekFlow.ts'

/** A visit to be given a week. Weeks are counted from 0, the first of the plan. */
export interface SpreadVisit {
  readonly id: string
  /** The first and last week that serve, both counting; cut to the plan where they reach out of it. */
  readonly first: number
  readonly last: number
  /** The week it is due, which may lie before the plan or outside the window. */
  readonly due: number
}

export interface PlacedVisit {
  readonly id: string
  readonly week: number
  /** Weeks after (over 0) or before (under 0) the week it is due. */
  readonly off: number
}

export interface SpreadResult {
  readonly placed: readonly PlacedVisit[]
  /** Visits no week could be found for: as few as there can be. */
  readonly left: readonly { readonly id: string; readonly because: 'no-week' | 'full' }[]
  /** Where visits were left because weeks are full: why no plan could have placed more of them. */
  readonly tight: readonly TightWeeks[]
  /** Total weeks late and early over all placed visits. */
  readonly lateWeeks: number
  readonly earlyWeeks: number
  /** Visits per week if each came the week it is due (the nearest of the plan), and as spread. */
  readonly before: readonly number[]
  readonly after: readonly number[]
}

/**
 * Chooses a week for every visit at once, so that no week takes more than it has room for and no visit leaves its
 * window. Exact, in this order: as few visits left over as possible, then the least total lateness, then the least
 * total earliness. `room[w]` is how many visits week w can still take beside what is booked.
 *
 * A minimum-cost flow from visits through weeks (Ahuja, Magnanti and Orlin 1993, chapter 9, from memory), see
 * `WeekFlow`. The same visits in another order cost the same. Refuses room that is no whole number from 0 up, windows
 * that end before they begin, and ids given twice. A year of tens of thousands comes in pieces: yields how many visits
 * have been placed so far.
 */
export function* spreadInSteps(
  visits: readonly SpreadVisit[],
  room: readonly number[],
): Generator<number, SpreadResult> {
  checkInput(visits, room)
  const flow = new WeekFlow(room, lateWeight(visits, room.length))
  const inPlan = visits.map(({ id, first, last, due }) => ({
    id,
    due,
    first: Math.max(0, first),
    last: Math.min(room.length - 1, last),
  }))
  const nowhere = inPlan.filter(({ first, last }) => first > last)
  const alike = Map.groupBy(
    inPlan.filter(({ first, last }) => first <= last),
    ({ first, last, due }) => `${first} ${last} ${due}`,
  )
  let done = 0
  for (const group of [...alike.values()].sort(byDue)) {
    const [like] = group
    if (!like) continue
    const { first, last, due } = like
    flow.add({ first, last, due, ids: group.map(visit => visit.id) })
    done += group.length
    yield done
  }
  const { weeks, full, tight } = flow.result()
  const placed: PlacedVisit[] = []
  const after = room.map(() => 0)
  let lateWeeks = 0
  let earlyWeeks = 0
  for (const visit of visits) {
    const week = weeks.get(visit.id)
    if (week === undefined) continue
    const off = week - visit.due
    placed.push({ id: visit.id, week, off })
    after[week]!++
    if (off > 0) lateWeeks += off
    else earlyWeeks -= off
  }
  const before = room.map(() => 0)
  if (room.length > 0) for (const { due } of visits) before[Math.min(room.length - 1, Math.max(0, due))]!++
  const left = [
    ...nowhere.map(({ id }) => ({ id, because: 'no-week' as const })),
    ...full.map(id => ({ id, because: 'full' as const })),
  ]
  return { placed, left, tight, lateWeeks, earlyWeeks, before, after }
}

function byDue([a]: readonly SpreadVisit[], [b]: readonly SpreadVisit[]): number {
  return a && b ? a.due - b.due || a.last - b.last : 0
}

/** One week of lateness must outweigh all earliness there can be, for the order of goals to hold. */
function lateWeight(visits: readonly SpreadVisit[], weeks: number): number {
  let earliness = 0
  for (const { due, first } of visits) earliness += Math.max(0, Math.min(due, due - Math.max(0, first)))
  const weight = earliness + 1
  // The dearest figure the flow adds up: four times the price of being left over.
  if (!Number.isSafeInteger(weight * (weeks + 1) ** 2 * 8))
    refuse(
      'spread-too-large',
      { visits: visits.length },
      say('{visits} visits over {weeks} weeks are more than can be counted exactly; spread a shorter time.', {
        visits: visits.length,
        weeks,
      }),
    )
  return weight
}

function checkInput(visits: readonly SpreadVisit[], room: readonly number[]) {
  room.forEach((places, week) => {
    if (!Number.isSafeInteger(places) || places < 0)
      refuse(
        'room-bad',
        { [`room.${week}`]: places },
        say('{places} is not a number of visits; use 0 or more.', { places }),
      )
  })
  const ids = new Set<string>()
  visits.forEach(({ id, first, last, due }, i) => {
    if (ids.has(id))
      refuse('visit-twice', { [`visits.${i}.id`]: id }, say('Visit {id} is there twice.', { id }))
    ids.add(id)
    for (const [name, week] of [
      ['first', first],
      ['last', last],
      ['due', due],
    ] as const)
      if (!Number.isSafeInteger(week))
        refuse(
          'week-bad',
          { [`visits.${i}.${name}`]: week },
          say('{week} is not a week; use whole numbers.', { week }),
        )
    if (first > last)
      refuse(
        'window-backwards',
        { [`visits.${i}.last`]: last },
        say('A window from week {first} to week {last} has no week; let it end later.', { first, last }),
      )
  })
}
