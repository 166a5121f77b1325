import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import { type DueDay, dueDayOf, nextRuleDay, openVisit } from './due.ts'
import type { DueEntry } from './dueList.ts'
import { absenceSpans } from './fitDay.ts'
import type { DueQuestion, NextDue } from './nextDue.ts'
import { type PlanStanding, standingOf } from './standing.ts'
import { alikeWords } from './visitsAfter.ts'

/** A plan's open visit, worked out once for many days. */
export interface StandingDue {
  /** Null: none follows. */
  readonly open: Pick<NextDue, 'ruleOn' | 'dueOn' | 'firstOn' | 'lastOn'> | null
  /** The last day, asked on which, the open visit is the very same; as long as nothing is written down meanwhile. */
  readonly throughOn: string
  /**
   * Plans of the same words have the same visits after their open ones where those have the same `ruleOn`; of plans that
   * count from the last visit (the words begin with `last-done`), where the later of today and `dueOn` is the same, and
   * the later of that and `ruleOn`. Null where the plan has its own: of what was agreed, skipped, or when the car is
   * away; and where none follows.
   */
  readonly alike: string | null
}

/** Later than any day a plan may name. */
const forever = '9999-12-31'

/** The open visit of a plan as `dueList` has it, and how long it stands by itself. */
export function standsThrough({ plan, records, car }: DueEntry, question: DueQuestion): StandingDue {
  const { anchor, earlyDays } = plan
  const today = dayNumber(question.today, 'today')
  const rule = dayRule(plan.rule, question.zone)
  const standing = standingOf(plan, records)
  const soldOn = car.soldOn === null ? null : dayNumber(car.soldOn, 'soldOn')
  const { isOpen } = question
  const frame = {
    today,
    soonDays: question.soonDays ?? 30,
    soldOn,
    away: absenceSpans(car.away),
    isOpen: isOpen ? (day: number) => isOpen(dateOfDay(day)) : null,
  }
  const visit = openVisit(plan, rule, standing, today)
  const due = visit && dueDayOf(plan, standing, visit, frame)
  const next = (after: number) => nextRuleDay(rule, standing, after)
  const plain = car.soldOn === null && car.away.length === 0 && isPlain(standing)
  if (!due) {
    const over = visit === null || (soldOn !== null && soldOn <= today)
    return { open: null, throughOn: over && isPlain(standing) ? forever : question.today, alike: null }
  }
  const through = plain ? Math.min(visitStands(), dayStands(due, today)) : today
  const follows = anchor.to === 'last-done' || next(due.ruleDay) !== null
  return {
    open: {
      ruleOn: dateOfDay(due.ruleDay),
      dueOn: dateOfDay(due.due),
      firstOn: dateOfDay(due.first),
      lastOn: dateOfDay(due.last),
    },
    throughOn: through === Number.POSITIVE_INFINITY ? forever : dateOfDay(through),
    alike: plain && follows ? alikeWords(plan) : null,
  }

  /** How long this is the open visit: by dates it gives way to the next, once that one's window opens. */
  function visitStands(): number {
    if (anchor.to === 'last-done' || !due) return Number.POSITIVE_INFINITY
    if (due.ruleDay >= today) return due.ruleDay
    const following = next(due.ruleDay)
    return following === null ? Number.POSITIVE_INFINITY : following - earlyDays - 1
  }
}

/** Nothing agreed, nothing skipped: the rule alone says when. */
function isPlain({ moved, skipped }: PlanStanding): boolean {
  return moved.size === 0 && skipped.size === 0
}

/** How long the visit has this day: one put on an open day keeps it until the rule's own day or that day comes. */
function dayStands({ shifts, ruleDay, due }: DueDay, today: number): number {
  return shifts.length === 0 || ruleDay < today ? Number.POSITIVE_INFINITY : Math.min(ruleDay, due)
}
