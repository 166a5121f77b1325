import type { DayRule } from '../recurrence/dayRule.ts'
import { type DaySpan, type DueWindow, fitToAbsences, fitToOpenDays, type Shift } from './fitDay.ts'
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
  /** Visits that passed undone before this one took their place. */
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
 * nobody came for gives way once the window of the next one opens, and is counted as missed.
 */
export function openVisit(
  plan: Plan,
  rule: DayRule,
  standing: PlanStanding,
  today: number,
): { ruleDay: number; missed: number } | null {
  let ruleDay = nextRuleDay(rule, standing, standing.after)
  if (ruleDay === null) return null
  let missed = 0
  while (plan.anchor.to === 'date' && ruleDay < today) {
    const agreed = standing.moved.get(ruleDay)
    if (agreed && agreed.to + plan.lateDays >= today) break
    const following = nextRuleDay(rule, standing, ruleDay)
    if (following === null || following - plan.earlyDays > today) break
    ruleDay = following
    missed++
  }
  return { ruleDay, missed }
}

/**
 * When a visit with this rule day falls due: moved as agreed, or else fitted to the car's absences and the shop's
 * open days. Null when the car is sold by then.
 */
export function dueDayOf(
  plan: Plan,
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
