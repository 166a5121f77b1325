import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import { type DueState, dueDayOf, openVisit } from './due.ts'
import { absenceSpans } from './fitDay.ts'
import type { CarTimes, Plan, VisitRecord } from './plan.ts'
import { standingOf } from './standing.ts'
import { dueWords, overWords } from './words.ts'

/** What a due day is asked for with. */
export interface DueQuestion {
  /** The day it is asked on, `YYYY-MM-DD`. */
  readonly today: string
  /** The shop's IANA zone, for rules that end at an instant. */
  readonly zone: string
  /** Whether the shop takes visits on a day; absent: any day will do. */
  readonly isOpen?: (date: string) => boolean
  /** How long before its window opens a visit counts as soon; 30 when absent. */
  readonly soonDays?: number
}

/** The next visit of a plan: its day, its window, and why. */
export interface NextDue {
  readonly planId: string
  /** The day the rule gave; it names the visit in records. */
  readonly ruleOn: string
  readonly dueOn: string
  /** The first and the last day that still serve. */
  readonly firstOn: string
  readonly lastOn: string
  readonly state: DueState
  /** Days past the due day, 0 until then. */
  readonly daysLate: number
  readonly missed: number
  readonly sentence: string
}

/** No visit follows, and why. */
export interface NoneDue {
  readonly planId: string
  readonly dueOn: null
  readonly because: 'sold' | 'over'
  readonly sentence: string
}

/** The next due visit of a plan with its window and a sentence that says why, or why there is none. */
export function nextDue(
  plan: Plan,
  records: readonly VisitRecord[],
  car: CarTimes,
  question: DueQuestion,
): NextDue | NoneDue {
  const rule = dayRule(plan.rule, question.zone)
  const standing = standingOf(plan, records)
  const today = dayNumber(question.today, 'today')
  const soldOn = car.soldOn === null ? null : dayNumber(car.soldOn, 'soldOn')
  const visit = openVisit(plan, rule, standing, today)
  if (!visit) {
    const because = soldOn !== null && soldOn <= today ? 'sold' : 'over'
    return { planId: plan.id, dueOn: null, because, sentence: overWords(plan, because, car.soldOn) }
  }
  const { isOpen } = question
  const due = dueDayOf(plan, standing, visit, {
    today,
    soonDays: question.soonDays ?? 30,
    soldOn,
    away: absenceSpans(car.away),
    isOpen: isOpen ? day => isOpen(dateOfDay(day)) : null,
  })
  if (!due)
    return { planId: plan.id, dueOn: null, because: 'sold', sentence: overWords(plan, 'sold', car.soldOn) }
  return {
    planId: plan.id,
    ruleOn: dateOfDay(due.ruleDay),
    dueOn: dateOfDay(due.due),
    firstOn: dateOfDay(due.first),
    lastOn: dateOfDay(due.last),
    state: due.state,
    daysLate: Math.max(0, today - due.due),
    missed: due.missed,
    sentence: dueWords(plan, standing, due, car.away),
  }
}
