import { dateOfDay, dayNumber } from '../../calendar/index.ts'
import type { ListedDue } from '../plan/dueList.ts'
import type { SpreadVisit } from './spread.ts'

/** The weeks a spread runs over: `weeks` of them, on whatever weekday the shop begins them. */
export interface WeekPlan {
  /** `YYYY-MM-DD`; week 0 begins here. */
  readonly beginsOn: string
  readonly weeks: number
  /** How many weeks a visit whose window has closed is given, counted from `today`'s week. */
  readonly overdueWeeks: number
}

/** The name a due visit has in a spread. */
export function visitKey(due: Pick<ListedDue, 'planId' | 'ruleOn'>): string {
  return `${due.planId} ${due.ruleOn}`
}

/**
 * Due visits as a spread takes them: their windows in weeks, no week before today's. One whose window has closed is
 * wanted as soon as can be, within `overdueWeeks`.
 */
export function weekWishes(due: readonly ListedDue[], plan: WeekPlan, today: string): SpreadVisit[] {
  const begins = dayNumber(plan.beginsOn, 'beginsOn')
  const weekOf = (date: string) => Math.floor((dayNumber(date) - begins) / 7)
  const now = weekOf(today)
  return due.map(visit => {
    const last = weekOf(visit.lastOn)
    const closed = last < now
    return {
      id: visitKey(visit),
      first: Math.max(now, weekOf(visit.firstOn)),
      last: closed ? now + plan.overdueWeeks - 1 : last,
      due: weekOf(visit.dueOn),
    }
  })
}

/**
 * The day of a week to aim a visit at: of the open days from today on, one in the window before one outside, then the
 * nearest to the due day, then the earlier. Null when the week has no open day left.
 */
export function targetDay(
  due: Pick<ListedDue, 'dueOn' | 'firstOn' | 'lastOn'>,
  week: number,
  plan: WeekPlan,
  today: string,
  isOpen: (date: string) => boolean,
): string | null {
  const first = dayNumber(plan.beginsOn, 'beginsOn') + week * 7
  const wanted = dayNumber(due.dueOn)
  let best: { date: string; cost: number } | null = null
  for (let day = first; day < first + 7; day++) {
    const date = dateOfDay(day)
    if (date < today || !isOpen(date)) continue
    const outside = date < due.firstOn || date > due.lastOn
    const cost = Math.abs(day - wanted) + (outside ? 1_000_000 : 0)
    if (!best || cost < best.cost) best = { date, cost }
  }
  return best?.date ?? null
}
