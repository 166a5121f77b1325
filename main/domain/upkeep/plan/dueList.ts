import { dateText, dayNumber } from '../recurrence/dayNumber.ts'
import { type DayRule, dayRule } from '../recurrence/dayRule.ts'
import { type DueDay, type DueFrame, type DueState, dueDayOf, nextRuleDay, openVisit } from './due.ts'
import { absenceSpans } from './fitDay.ts'
import type { DueQuestion } from './nextDue.ts'
import type { CarTimes, Plan, VisitRecord } from './plan.ts'
import { type PlanStanding, standingOf } from './standing.ts'

export interface DueEntry {
  readonly plan: Plan
  readonly records: readonly VisitRecord[]
  readonly car: CarTimes
}

export interface ListedDue {
  readonly planId: string
  readonly ruleOn: string
  readonly dueOn: string
  readonly firstOn: string
  readonly lastOn: string
  readonly state: DueState
  /** Not the next visit but one after it, if all before are done when due. */
  readonly projected: boolean
}

/**
 * All visits of many plans due up to and including a day, by due day: each plan's open visit, overdue ones too, and
 * those that follow if each is done when due (an overdue one today). `nextDue` says why, visit by visit.
 */
export function dueList(
  entries: readonly DueEntry[],
  question: DueQuestion & { readonly until: string },
): ListedDue[] {
  const today = dayNumber(question.today, 'today')
  const until = dayNumber(question.until, 'until')
  const rules = new Map<string, DayRule>()
  const text = memo(dateText)
  const { isOpen } = question
  const open = isOpen ? memo(day => isOpen(text(day))) : null
  const found: { item: ListedDue; due: number }[] = []
  for (const { plan, records, car } of entries) {
    let rule = rules.get(plan.rule)
    if (!rule) {
      rule = dayRule(plan.rule, question.zone)
      rules.set(plan.rule, rule)
    }
    const frame: DueFrame = {
      today,
      soonDays: question.soonDays ?? 30,
      soldOn: car.soldOn === null ? null : dayNumber(car.soldOn, 'soldOn'),
      away: absenceSpans(car.away),
      isOpen: open,
    }
    walkDue(plan, rule, standingOf(plan, records), frame, until, (due, projected) => {
      const item = {
        planId: plan.id,
        ruleOn: text(due.ruleDay),
        dueOn: text(due.due),
        firstOn: text(due.first),
        lastOn: text(due.last),
        state: due.state,
        projected,
      }
      found.push({ item, due: due.due })
    })
  }
  return found.sort((a, b) => a.due - b.due).map(({ item }) => item)
}

const NO_MOVES: PlanStanding['moved'] = new Map()

function walkDue(
  plan: Plan,
  rule: DayRule,
  standing: PlanStanding,
  frame: DueFrame,
  until: number,
  give: (due: DueDay, projected: boolean) => void,
) {
  let visit = openVisit(plan, rule, standing, frame.today)
  let now = standing
  let projected = false
  while (visit) {
    const due = dueDayOf(plan, now, visit, frame)
    if (!due || due.due > until) return
    give(due, projected)
    projected = true
    let after = visit.ruleDay
    if (plan.anchor.to === 'last-done') {
      const done = Math.max(due.due, frame.today)
      // One put forward a day for a closed Sunday must not be followed by the same Sunday again; one moved by
      // agreement is really followed from the day agreed, and what was agreed is then used up.
      after = due.moved ? done : Math.max(done, visit.ruleDay)
      now = { ...now, start: done, after, moved: NO_MOVES }
    }
    const ruleDay = nextRuleDay(rule, now, after)
    visit = ruleDay === null ? null : { ruleDay, missed: 0 }
  }
}

/** A function of a day that is asked for the same few hundred days over and over. */
function memo<T>(compute: (day: number) => T): (day: number) => T {
  const known = new Map<number, T>()
  return day => {
    let value = known.get(day)
    if (value === undefined) {
      value = compute(day)
      known.set(day, value)
    }
    return value
  }
}
