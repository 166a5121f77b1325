import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import { LONGEST_AWAY_DAYS, planDay } from './limits.ts'

export type PlanKind = 'first-wash' | 'check-up' | 'topper' | 'inspection' | 'other'

/** What a plan's rule counts from. */
export type Anchor =
  /** A date (`YYYY-MM-DD`): the rule's first day, itself a visit where the rule names it. */
  | { readonly to: 'date'; readonly on: string }
  /** The last visit done, or until the first one an event on a date, such as the coating; not itself a visit. */
  | { readonly to: 'last-done'; readonly since: string; readonly event: string }

/** One car's standing arrangement for one kind of visit. */
export interface Plan {
  readonly id: string
  readonly kind: PlanKind
  /** As the desk says it: "topper renewal". */
  readonly title: string
  /** An RFC 5545 recurrence rule of days or longer. */
  readonly rule: string
  readonly anchor: Anchor
  /** How many days before and after the due day a visit still serves; whole, from 0 up. */
  readonly earlyDays: number
  readonly lateDays: number
}

/**
 * What happened to a plan's visits, in the order it was written down. `dueOn` names a visit by the day the rule gave
 * it; a done visit that answers none of them (an extra one) has null.
 */
export type VisitRecord =
  | { readonly what: 'done'; readonly on: string; readonly dueOn: string | null }
  | { readonly what: 'skipped'; readonly dueOn: string; readonly why?: string }
  | { readonly what: 'moved'; readonly dueOn: string; readonly to: string; readonly why?: string }

/** When a car cannot come: days `[from, to)`, `to` being the first day back. */
export interface Absence {
  readonly from: string
  readonly to: string
  readonly why?: string
}

export interface CarTimes {
  readonly soldOn: string | null
  readonly away: readonly Absence[]
}

/** Refuses a plan that could never say when: a bad rule or one that names no day, a bad date, or a window that is none. */
export function checkPlan(plan: Plan, zone: string): void {
  const { rule, anchor } = plan
  const start = anchor.to === 'date' ? planDay(anchor.on, 'anchor.on') : planDay(anchor.since, 'anchor.since')
  // An anchor that is a date is itself a visit where the rule names it; the last visit done is not.
  if (dayRule(rule, zone).next(start, anchor.to === 'date' ? start - 1 : start) === null)
    refuse(
      'rule-never',
      { rule },
      say(
        '"{rule}" names no day in the sixty years from its start; change the rule or the date it counts from.',
        { rule },
      ),
    )
  if (plan.title.trim() === '') refuse('title-empty', { title: plan.title }, say('Give the plan a name.'))
  for (const name of ['earlyDays', 'lateDays'] as const)
    if (!Number.isSafeInteger(plan[name]) || plan[name] < 0 || plan[name] > 366)
      refuse(
        'window-bad',
        { [name]: plan[name] },
        say('{plan} days is no window; use whole days from 0 to 366.', { plan: plan[name] }),
      )
}

/** Refuses absences that end before they begin, or last more than five years. */
export function checkAbsences(away: readonly Absence[]): void {
  away.forEach(({ from, to }, i) => {
    const days = planDay(to, `away.${i}.to`) - planDay(from, `away.${i}.from`)
    if (days > LONGEST_AWAY_DAYS)
      refuse(
        'absence-long',
        { [`away.${i}.to`]: to },
        say('{from} to {to} is more than five years; record a car that is gone for good as sold.', {
          from,
          to,
        }),
      )
    if (days <= 0)
      refuse(
        'absence-backwards',
        { [`away.${i}.to`]: to },
        say('Back on {to} is not after leaving on {from}; let the first day back come later.', { to, from }),
      )
  })
}
