import { type Ground, prepare } from './ground.ts'
import {
  type Better,
  bestFinish,
  blockedOf,
  earliestDropOffFirst,
  leastBlockedFirst,
  soonestFirst,
} from './handovers.ts'
import { planOf } from './offer.ts'
import { type Query, type Reached, search } from './search.ts'
import type { Case, Offer, Plan } from './types.ts'

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

/** A better answer: its plan, and by how many minutes it is better (0 where there was none at all). */
export interface Improvement {
  readonly plan: Plan
  readonly gain: number
}

/** How far past an offer's handover an earlier drop-off may lead; enough for every wait a shop would accept. */
const BEYOND = 14 * 1440

/** The best answer to the goal in this (relaxed) case, or undefined. Searches only as far as the goal reaches. */
export function improvementOf(kase: Case, goal: Goal): Improvement | undefined {
  const { release, asked } = kase.newJob
  const late = Math.max(release, asked)
  switch (goal.kind) {
    case 'any':
      return found(
        kase,
        { lo: release, hi: kase.horizon, dropOff: 'latest' },
        () => soonestFirst,
        plan => -plan.handover,
      )
    case 'anyAfterAsked':
      return found(
        kase,
        { lo: late, hi: kase.horizon, dropOff: 'latest' },
        () => soonestFirst,
        plan => -plan.handover,
      )
    case 'earlierHandover': {
      const hi = goal.than.handover - 1
      return found(
        kase,
        { lo: release, hi, dropOff: 'latest' },
        () => soonestFirst,
        plan => hi + 1 - plan.handover,
      )
    }
    case 'earlierAndNoMoreBlocked': {
      const hi = goal.than.handover - 1
      const query: Query = { lo: release, hi, dropOff: 'latest' }
      return found(kase, query, leastBlockedFirst, plan => hi + 1 - plan.handover, goal.than.blockedOpen)
    }
    case 'earlierDropOff': {
      const hi = Math.min(kase.horizon, goal.than.handover + BEYOND)
      const query: Query = { lo: late, hi, dropOff: 'earliest', dropTo: goal.than.dropOff - 1 }
      return found(kase, query, earliestDropOffFirst, plan => goal.than.dropOff - plan.steps[0]!.start)
    }
    case 'earlierHandoverSameDropOff': {
      const { dropOff, handover } = goal.than
      const query: Query = { lo: dropOff, hi: handover - 1, dropOff: 'latest', dropTo: dropOff }
      return found(
        kase,
        query,
        () => soonestFirst,
        plan => handover - plan.handover,
      )
    }
  }
}

function found(
  kase: Case,
  query: Query,
  better: (reached: Reached) => Better,
  gainOf: (plan: Plan) => number,
  mostBlocked = Number.POSITIVE_INFINITY,
): Improvement | undefined {
  if (query.hi <= query.lo) return undefined
  const ground: Ground = prepare(near(kase, query))
  const reached = search(ground, query)
  const finish = bestFinish(reached, better(reached))
  if (!finish || (query.dropOff === 'latest' && blockedOf(reached, finish) > mostBlocked)) return undefined
  const plan = planOf(reached, finish)
  return { plan, gain: gainOf(plan) }
}

/** The case without what lies outside the searched time, so that a short search stays short. */
function near(kase: Case, query: Query): Case {
  const touches = (span: { from: number; to: number }) => span.to > query.lo && span.from < query.hi
  return {
    ...kase,
    fixed: kase.fixed.filter(touches),
    crew: kase.crew.map(person => ({ ...person, away: person.away.filter(touches) })),
  }
}
