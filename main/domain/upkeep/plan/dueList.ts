import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { say } from '../../language/index.ts'
import { Refusal, refuse } from '../../refusal.ts'
import { type DayRule, dayRule } from '../recurrence/dayRule.ts'
import { type DueDay, type DueFrame, dueDayOf, openVisit } from './due.ts'
import { absenceSpans } from './fitDay.ts'
import { LISTED_AHEAD_DAYS } from './limits.ts'
import type { DueQuestion, NextDue } from './nextDue.ts'
import type { CarTimes, Plan, VisitRecord } from './plan.ts'
import { type PlanStanding, standingOf } from './standing.ts'
import { memo, walkAfter } from './walkAfter.ts'

export interface DueEntry {
  readonly plan: Plan
  readonly records: readonly VisitRecord[]
  readonly car: CarTimes
}

export interface ListedDue
  extends Pick<NextDue, 'planId' | 'ruleOn' | 'dueOn' | 'firstOn' | 'lastOn' | 'state'> {
  /** Not the next visit but one after it, if all before are done when due. */
  readonly projected: boolean
}

/**
 * All visits of many plans due up to and including a day, by due day: each plan's open visit, overdue ones too, and
 * those that follow if each is done when due (an overdue one today). `nextDue` says why, visit by visit. A plan that
 * cannot be worked out (one kept from before a limit was set) is handed to `refused` with the reason and leaves the
 * others standing; without `refused` it is thrown.
 * @throws Refusal when `until` lies more than 25 years after today.
 */
export function dueList(
  entries: readonly DueEntry[],
  question: DueQuestion & { readonly until: string },
  refused?: (planId: string, reason: Refusal) => void,
): ListedDue[] {
  const today = dayNumber(question.today, 'today')
  const until = dayNumber(question.until, 'until')
  if (until > today + LISTED_AHEAD_DAYS)
    refuse(
      'until-far',
      { until: question.until },
      say('Visits are listed 25 years ahead at most; {until} is further.', { until: question.until }),
    )
  const rules = new Map<string, DayRule>()
  const text = memo(dateOfDay)
  const { isOpen } = question
  const open = isOpen ? memo(day => isOpen(text(day))) : null
  const found: { item: ListedDue; due: number }[] = []
  const list = ({ plan, records, car }: DueEntry) => {
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
  for (const entry of entries)
    try {
      list(entry)
    } catch (error) {
      if (!refused || !(error instanceof Refusal)) throw error
      refused(entry.plan.id, error)
    }
  return found.sort((a, b) => a.due - b.due).map(({ item }) => item)
}

function walkDue(
  plan: Plan,
  rule: DayRule,
  standing: PlanStanding,
  frame: DueFrame,
  until: number,
  give: (due: DueDay, projected: boolean) => void,
) {
  const visit = openVisit(plan, rule, standing, frame.today)
  const open = visit && dueDayOf(plan, standing, visit, frame)
  if (!open || open.due > until) return
  give(open, false)
  walkAfter(plan, rule, standing, open, frame, until, due => give(due, true))
}
