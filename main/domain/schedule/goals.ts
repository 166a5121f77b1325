import type { Span } from '../calendar/spans.ts'
import {
  type Better,
  bestFinish,
  blockedOf,
  earliestDropOffFirst,
  type Finish,
  leastBlockedFirst,
  soonestFirst,
} from './handovers.ts'
import { planOf } from './offer.ts'
import { prepare } from './prepare.ts'
import { type Query, type Reached, search } from './search.ts'
import type { Offer, Plan, Problem } from './types.ts'

/** What would have been a better answer. */
export type Goal =
  | { readonly kind: 'any' | 'anyAfterAsked' }
  | {
      readonly kind:
        | 'earlierHandover'
        | 'earlierAndNoMoreBlocked'
        | 'earlierDropOff'
        | 'earlierHandoverSameDropOff'
      readonly than: Offer
    }

/** A better answer: its plan, and by how many minutes it is better; where there was none, by how many it keeps within the horizon. */
export interface Improvement {
  readonly plan: Plan
  readonly gain: number
}

/** How far past an offer's handover an earlier drop-off may lead; enough for every wait a shop would accept. */
const BEYOND = 14 * 1440

/** How far before an offer's handover a better one is looked for: what binds it lies near it, not months before. */
const BEFORE = 28 * 1440

/** Where the goal is to be looked for: only as far as it reaches, so that a short search stays short. */
function queryOf(problem: Problem, goal: Goal): Query {
  const { release, asked } = problem.newJob
  const late = Math.max(release, asked)
  switch (goal.kind) {
    case 'any':
      return { lo: release, hi: problem.horizon, dropOff: 'latest' }
    case 'anyAfterAsked':
      return { lo: late, hi: problem.horizon, dropOff: 'latest' }
    case 'earlierHandover':
    case 'earlierAndNoMoreBlocked': {
      const { dropOff, handover } = goal.than
      return {
        lo: Math.max(release, Math.min(dropOff, handover - BEFORE)),
        hi: handover - 1,
        dropOff: 'latest',
      }
    }
    case 'earlierDropOff': {
      const hi = Math.min(problem.horizon, goal.than.handover + BEYOND)
      return { lo: late, hi, dropOff: 'earliest', dropTo: goal.than.dropOff - 1 }
    }
    case 'earlierHandoverSameDropOff': {
      const { dropOff, handover } = goal.than
      return { lo: dropOff, hi: handover - 1, dropOff: 'latest', dropTo: dropOff }
    }
  }
}

/** A goal with the time it is looked for in, searched once under every rule: what a dropped one leaves alone is taken over. */
export interface Ground {
  readonly goal: Goal
  /** The problem without what lies outside that time. */
  readonly near: Problem
  readonly reached: Reached | undefined
}

export function groundOf(problem: Problem, goal: Goal): Ground {
  const near = nearGoal(problem, goal)
  const query = queryOf(near, goal)
  return { goal, near, reached: isEmpty(query) ? undefined : search(prepare(near), query) }
}

/** Whether no plan can be found in the time looked at, whatever the rules. */
function isEmpty({ lo, hi, dropTo = hi }: Query): boolean {
  return hi <= lo || dropTo < lo
}

/** A better answer as a search found it, not yet read back into a plan. */
interface Bettered {
  readonly reached: Reached
  readonly finish: Finish
}

/** The best answer to the goal in this problem, the near one without some rules, or undefined. */
export function betterIn({ goal, reached: before }: Ground, relaxed: Problem): Bettered | undefined {
  const query = queryOf(relaxed, goal)
  if (isEmpty(query)) return undefined
  const prepared = prepare(relaxed, before?.prepared)
  const reached = search(prepared, query, before?.query.hi === query.hi ? before : undefined)
  const finish = bestFinish(reached, betterOf(goal, reached))
  if (!finish) return undefined
  if (goal.kind === 'earlierAndNoMoreBlocked' && blockedOf(reached, finish) > goal.than.blockedOpen)
    return undefined
  return { reached, finish }
}

/** The plan of a better answer, and by how much it is better. */
export function improvementOf(goal: Goal, { reached, finish }: Bettered): Improvement {
  const plan = planOf(reached, finish)
  if (goal.kind === 'earlierDropOff') return { plan, gain: goal.than.dropOff - plan.steps[0]!.start }
  const { horizon } = reached.prepared.problem
  return { plan, gain: ('than' in goal ? goal.than.handover : horizon) - plan.handover }
}

function betterOf(goal: Goal, reached: Reached): Better {
  if (goal.kind === 'earlierAndNoMoreBlocked') return leastBlockedFirst(reached)
  return goal.kind === 'earlierDropOff' ? earliestDropOffFirst(reached) : soonestFirst
}

/** The problem without what lies outside the time in which the goal is looked for. */
export function nearGoal(problem: Problem, goal: Goal): Problem {
  const { lo, hi } = queryOf(problem, goal)
  const touches = (span: Span) => span.to >= lo && span.from <= hi
  return {
    ...problem,
    horizon: hi,
    open: problem.open.filter(touches),
    bays: problem.bays.map(bay => ({ ...bay, closed: bay.closed.filter(touches) })),
    fixed: problem.fixed.filter(touches),
    crew: problem.crew.map(person => ({ ...person, away: person.away.filter(touches) })),
    newJob: { ...problem.newJob, release: lo },
  }
}
