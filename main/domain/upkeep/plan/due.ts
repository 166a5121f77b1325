import { firstIndex } from '../../calendar/index.ts'
import type { DayRule } from '../recurrence/dayRule.ts'
import { type DaySpan, type DueWindow, fitToAbsences, fitToOpenDays, type Shift } from './fitDay.ts'
import { MOST_MISSED } from './limits.ts'
import type { Plan } from './plan.ts'
import type { PlanStanding } from './standing.ts'

/** later: its window is far off; soon: it opens within `soonDays`; due: it is open; overdue: it has closed. */
export type DueState = 'later' | 'soon' | 'due' | 'overdue'

/** What decides about a due day besides the plan; days as day numbers. */
export interface DueFrame {
  readonly today: number
  readonly soonDays: number
  readonly soldOn: number | null
  readonly away: readonly DaySpan[]
  readonly isOpen: ((day: number) => boolean) | null
}

/** A due visit in day numbers, with what led to its day. */
export interface DueDay extends DueWindow {
  /** The day the rule gave, which names the visit. */
  readonly ruleDay: number
  readonly state: DueState
  /** Visits that passed undone before this one took their place, `MOST_MISSED` at most. */
  readonly missed: number
  readonly moved: { readonly why: string | null } | null
  readonly shifts: readonly Shift[]
}

/** The rule's next visit that is neither closed nor skipped, after a day; null when there are no more. */
export function nextRuleDay(rule: DayRule, standing: PlanStanding, after: number): number | null {
  let day = rule.next(standing.start, after)
  while (day !== null && standing.skipped.has(day)) day = rule.next(standing.start, day)
  return day
}

/**
 * The open visit of a plan. With an anchor at the last visit it stays open until done or skipped. By dates, a visit
 * nobody came for gives way once the window of the next one opens, and is counted as missed (up to `MOST_MISSED`); one
 * agreed for a day that still serves stays.
 */
export function openVisit(
  plan: Plan,
  rule: DayRule,
  standing: PlanStanding,
  today: number,
): { ruleDay: number; missed: number } | null {
  const first = nextRuleDay(rule, standing, standing.after)
  if (first === null) return null
  if (plan.anchor.to !== 'date' || first >= today) return { ruleDay: first, missed: 0 }
  let ruleDay = agreedDay(plan, rule, standing, first, today)
  if (ruleDay === null) {
    ruleDay = lastRuleDay(rule, standing, first, today)
    const following = nextRuleDay(rule, standing, ruleDay)
    if (following !== null && following - plan.earlyDays <= today) ruleDay = following
  }
  let missed = 0
  for (let day: number | null = first; day !== null && day < ruleDay && missed < MOST_MISSED; missed++)
    day = nextRuleDay(rule, standing, day)
  return { ruleDay, missed }
}

/** The first of the rule's days in `[first, today)` that was moved to a day still serving today. */
function agreedDay(
  { lateDays }: Plan,
  rule: DayRule,
  standing: PlanStanding,
  first: number,
  today: number,
): number | null {
  const held = [...standing.moved]
    .filter(([day, { to }]) => first <= day && day < today && to + lateDays >= today)
    .map(([day]) => day)
    .filter(day => nextRuleDay(rule, standing, day - 1) === day)
  return held.length > 0 ? Math.min(...held) : null
}

/** The last of the rule's days in `[first, before)`, `first` being one: by halving, since thousands may lie between. */
function lastRuleDay(rule: DayRule, standing: PlanStanding, first: number, before: number): number {
  const later = (n: number) => nextRuleDay(rule, standing, first + n) ?? Number.POSITIVE_INFINITY
  return first + firstIndex(before - first, n => later(n) >= before)
}

/**
 * When a visit with this rule day falls due: moved as agreed, or else fitted to the car's absences and the shop's
 * open days. Null when the car is sold by then.
 */
export function dueDayOf(
  plan: Pick<Plan, 'earlyDays' | 'lateDays'>,
  standing: PlanStanding,
  visit: { ruleDay: number; missed: number },
  frame: DueFrame,
): DueDay | null {
  const { today, soldOn } = frame
  const agreed = standing.moved.get(visit.ruleDay)
  const day = agreed?.to ?? visit.ruleDay
  let window: DueWindow = { due: day, first: day - plan.earlyDays, last: day + plan.lateDays }
  const shifts: Shift[] = []
  // A day agreed with the owner stands: they know where their car is.
  if (!agreed) {
    const present = frame.away.length > 0 ? fitToAbsences(window, frame.away, today) : null
    if (present) window = present.window
    if (present?.shift) shifts.push(present.shift)
    const open = frame.isOpen ? fitToOpenDays(window, frame.isOpen, today) : null
    if (open) window = open.window
    if (open?.shift) shifts.push(open.shift)
  }
  if (soldOn !== null && (soldOn <= today || soldOn <= window.due)) return null
  return {
    ...window,
    ruleDay: visit.ruleDay,
    state: stateOf(window, today, frame.soonDays),
    missed: visit.missed,
    moved: agreed ? { why: agreed.why } : null,
    shifts,
  }
}

function stateOf({ first, last }: DueWindow, today: number, soonDays: number): DueState {
  if (today > last) return 'overdue'
  if (today >= first) return 'due'
  return first - today <= soonDays ? 'soon' : 'later'
}
