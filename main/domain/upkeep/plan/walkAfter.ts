/** The visits after a plan's open one, if each is done when due. */
import type { DayRule } from '../recurrence/dayRule.ts'
import { type DueDay, type DueFrame, dueDayOf, nextRuleDay } from './due.ts'
import type { Plan } from './plan.ts'
import type { PlanStanding } from './standing.ts'

const NO_MOVES: PlanStanding['moved'] = new Map()

/** Gives each visit after `open` that is due up to a day; an overdue one is taken to be done today. */
export function walkAfter(
  plan: Pick<Plan, 'anchor' | 'earlyDays' | 'lateDays'>,
  rule: DayRule,
  standing: PlanStanding,
  open: Pick<DueDay, 'ruleDay' | 'due' | 'moved'>,
  frame: DueFrame,
  until: number,
  give: (due: DueDay) => void,
): void {
  let now = standing
  let last = open
  for (;;) {
    let after = last.ruleDay
    if (plan.anchor.to === 'last-done') {
      const done = Math.max(last.due, frame.today)
      // One put forward a day for a closed Sunday must not be followed by the same Sunday again; one moved by
      // agreement is really followed from the day agreed, and what was agreed is then used up.
      after = last.moved ? done : Math.max(done, last.ruleDay)
      now = { ...now, start: done, after, moved: NO_MOVES }
    }
    const ruleDay = nextRuleDay(rule, now, after)
    const due = ruleDay === null ? null : dueDayOf(plan, now, { ruleDay, missed: 0 }, frame)
    if (!due || due.due > until) return
    give(due)
    last = due
  }
}

/** A function of a day that is asked for the same few hundred days over and over. */
export function memo<T>(compute: (day: number) => T): (day: number) => T {
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
