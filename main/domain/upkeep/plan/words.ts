import { dateOfDay, dayNumber, dayWords } from '../../calendar/index.ts'
import { ruleWords } from '../recurrence/ruleWords.ts'
import type { DueDay } from './due.ts'
import type { Shift } from './fitDay.ts'
import { MOST_MISSED } from './limits.ts'
import type { Absence, Plan } from './plan.ts'
import type { PlanStanding } from './standing.ts'

/** A day number as "14 September 2026". */
export function dayNumberWords(day: number): string {
  return dayWords(dateOfDay(day))
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** Why a visit is due on its day, and which days would do as well, in one or two sentences. */
export function dueWords(plan: Plan, standing: PlanStanding, due: DueDay, away: readonly Absence[]): string {
  const parts = [
    `${capital(plan.title)} is due on ${dayNumberWords(due.due)}: ${originWords(plan, standing, due)}`,
  ]
  if (due.moved)
    parts.push(`moved from ${dayNumberWords(due.ruleDay)}${due.moved.why ? ` (${due.moved.why})` : ''}`)
  for (const shift of due.shifts) parts.push(shiftWords(shift, away))
  const sentences = [`${parts.join('; ')}.`]
  if (due.first < due.last)
    sentences.push(`Any day from ${dayNumberWords(due.first)} to ${dayNumberWords(due.last)} will do.`)
  if (due.missed > 0)
    sentences.push(
      due.missed === 1
        ? 'The visit before it was missed.'
        : `The ${due.missed === MOST_MISSED ? `${MOST_MISSED} or more` : due.missed} visits before it were missed.`,
    )
  return sentences.join(' ')
}

function originWords(plan: Plan, standing: PlanStanding, due: DueDay): string {
  if (plan.anchor.to === 'date') {
    const first = dayNumberWords(standing.start)
    return due.ruleDay === standing.start
      ? `planned for ${first}`
      : `${ruleWords(plan.rule)}, from ${first} on`
  }
  const event = standing.lastDone === null ? plan.anchor.event : 'the last one'
  const skipped = standing.after > standing.start ? `, after one skipped` : ''
  return `${ruleWords(plan.rule)}, counted from ${event} on ${dayNumberWords(standing.start)}${skipped}`
}

function shiftWords(shift: Shift, away: readonly Absence[]): string {
  if (shift.code === 'closed-day') return 'put on the nearest open day'
  if (shift.code === 'closed-window')
    return 'put on the first open day after its window, in which the shop is closed'
  const { from, to } = shift.span
  const why = away.find(one => dayNumber(one.from) < to && from < dayNumber(one.to))?.why
  const absence = `the car is away from ${dayNumberWords(from)} until ${dayNumberWords(to)}${why ? ` (${why})` : ''}`
  if (shift.code === 'away-before') return `put before it leaves, as ${absence}`
  if (shift.code === 'away-after') return `put after it is back, as ${absence}`
  return `later than its window, as ${absence}`
}

/** Why no visit of a plan follows. */
export function overWords(plan: Plan, because: 'sold' | 'over', soldOn: string | null): string {
  const title = capital(plan.title)
  if (because === 'sold' && soldOn !== null)
    return `${title} is not due again: the car was sold on ${dayWords(soldOn)}.`
  return `${title} is not due again: its rule names no further day.`
}
