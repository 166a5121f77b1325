import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import { dayRule } from '../recurrence/dayRule.ts'
import { openVisit } from './due.ts'
import type { Plan, VisitRecord } from './plan.ts'
import { standingOf } from './standing.ts'

/**
 * Which visit one done on a day answers, by the day the rule gave it, or null when it is an extra one. A plan
 * anchored to the last visit takes any visit, early or late: its clock starts again. One that goes by dates takes it
 * for the open visit when its window (or the one around the day agreed) has opened; earlier than that it answers none,
 * and the dates go on.
 */
export function visitAnswered(
  plan: Plan,
  records: readonly VisitRecord[],
  doneOn: string,
  zone: string,
): string | null {
  const standing = standingOf(plan, records)
  const day = dayNumber(doneOn, 'doneOn')
  const visit = openVisit(plan, dayRule(plan.rule, zone), standing, day)
  if (!visit) return null
  const agreed = standing.moved.get(visit.ruleDay)?.to ?? visit.ruleDay
  if (plan.anchor.to === 'date' && day < agreed - plan.earlyDays) return null
  return dateOfDay(visit.ruleDay)
}
