import { dateOfDay, dayNumber, dayWords } from '../../calendar/index.ts'
import { say, sayKept } from '../../language/index.ts'
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
    say('{title} is due on {due}: {plan}', {
      title: capital(sayKept(plan.title)),
      due: dayNumberWords(due.due),
      plan: originWords(plan, standing, due),
    }),
  ]
  if (due.moved)
    parts.push(
      say('moved from {ruleDay}{why}', {
        ruleDay: dayNumberWords(due.ruleDay),
        why: due.moved.why ? ` (${due.moved.why})` : '',
      }),
    )
  for (const shift of due.shifts) parts.push(shiftWords(shift, away))
  const sentences = [`${parts.join('; ')}.`]
  if (due.first < due.last)
    sentences.push(
      say('Any day from {first} to {last} will do.', {
        first: dayNumberWords(due.first),
        last: dayNumberWords(due.last),
      }),
    )
  if (due.missed > 0)
    sentences.push(
      say(
        due.missed === MOST_MISSED
          ? 'The {missed} or more visits before it were missed.'
          : '{missed, plural, one {The visit before it was missed.} other {The {missed} visits before it were missed.}}',
        { missed: due.missed },
      ),
    )
  return sentences.join(' ')
}

function originWords(plan: Plan, standing: PlanStanding, due: DueDay): string {
  if (plan.anchor.to === 'date') {
    const first = dayNumberWords(standing.start)
    return due.ruleDay === standing.start
      ? say('planned for {first}', { first })
      : say('{rule}, from {first} on', { rule: ruleWords(plan.rule), first })
  }
  const event = standing.lastDone === null ? sayKept(plan.anchor.event) : say('the last one')
  return say(
    standing.after > standing.start
      ? '{rule}, counted from {event} on {start}, after one skipped'
      : '{rule}, counted from {event} on {start}',
    { rule: ruleWords(plan.rule), event, start: dayNumberWords(standing.start) },
  )
}

function shiftWords(shift: Shift, away: readonly Absence[]): string {
  if (shift.code === 'closed-day') return say('put on the nearest open day')
  if (shift.code === 'closed-window')
    return say('put on the first open day after its window, in which the shop is closed')
  const { from, to } = shift.span
  const why = away.find(one => dayNumber(one.from) < to && from < dayNumber(one.to))?.why
  const absence = say('the car is away from {from} until {to}{why}', {
    from: dayNumberWords(from),
    to: dayNumberWords(to),
    why: why ? ` (${why})` : '',
  })
  if (shift.code === 'away-before') return say('put before it leaves, as {absence}', { absence })
  if (shift.code === 'away-after') return say('put after it is back, as {absence}', { absence })
  return say('later than its window, as {absence}', { absence })
}

/** Why no visit of a plan follows. */
export function overWords(plan: Plan, because: 'sold' | 'over', soldOn: string | null): string {
  const title = capital(sayKept(plan.title))
  if (because === 'sold' && soldOn !== null)
    return say('{title} is not due again: the car was sold on {soldOn}.', { title, soldOn: dayWords(soldOn) })
  return say('{title} is not due again: its rule has no further day.', { title })
}
