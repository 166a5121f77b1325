import { bindingOf } from './bindings.ts'
import { type Goal, type Improvement, improvementOf, nearGoal } from './goals.ts'
import { impossibleSteps } from './impossible.ts'
import type { Binding } from './reasons.ts'
import { type Rule, rulesOf, without } from './relax.ts'
import type { Case, NoOffer, Offer } from './types.ts'

/** How many reasons a desk reads before it stops reading. */
const MOST = 4

/**
 * What keeps this answer from being better, or from being there: found by dropping one rule at a time (a bay's
 * bookings, a skill's absences, a wait, a cure, the hours) and searching again, so a reason is never guessed. Named
 * are the rules without which the answer would be better, those that cost most first; where no single one is to
 * blame, a smallest set that is. Costs some dozens of short searches: ask it after `promise`, for what is shown.
 */
export function explain(kase: Case, answer: Offer | NoOffer): Binding[] {
  if (!answer.feasible) {
    const impossible = impossibleSteps(kase)
    if (impossible.length > 0) return impossible
    return bindings(kase, { kind: answer.kind === 'askedDay' ? 'anyAfterAsked' : 'any' })
  }
  if (answer.kind === 'soonest') return bindings(kase, { kind: 'earlierHandover', than: answer })
  if (answer.kind === 'leastBlocked') return bindings(kase, { kind: 'earlierAndNoMoreBlocked', than: answer })
  const arrival = bindings(kase, { kind: 'earlierDropOff', than: answer })
  const departure = bindings(kase, { kind: 'earlierHandoverSameDropOff', than: answer })
  const known = new Set(arrival.map(reason => JSON.stringify(reason)))
  return [...arrival, ...departure.filter(reason => !known.has(JSON.stringify(reason)))]
}

function bindings(kase: Case, goal: Goal): Binding[] {
  const near = nearGoal(kase, goal)
  const rules = rulesOf(near).filter(rule => counts(rule, goal))
  const found: { rule: Rule; improvement: Improvement }[] = []
  for (const rule of rules) {
    const improvement = improvementOf(without(near, rule), goal)
    if (improvement) found.push({ rule, improvement })
  }
  if (found.length === 0) return together(kase, near, goal, rules)
  // The hours would better nearly everything: they are named when nothing else is.
  const rank = (rule: Rule) => (rule.kind === 'hours' ? 1 : 0)
  found.sort((a, b) => rank(a.rule) - rank(b.rule) || b.improvement.gain - a.improvement.gain)
  const others = found.filter(one => rank(one.rule) === 0)
  return (others.length > 0 ? others : found)
    .slice(0, MOST)
    .map(one => bindingOf(kase, goal, one.rule, one.improvement.plan))
}

/** A smallest set of rules that must be dropped together; each is kept again as long as the rest suffices. */
function together(kase: Case, near: Case, goal: Goal, rules: readonly Rule[]): Binding[] {
  const dropAll = (some: readonly Rule[]) => improvementOf(some.reduce(without, near), goal)
  let dropped = [...rules]
  let best = dropAll(dropped)
  if (!best) {
    return 'than' in goal ? [ownPace(kase, goal.than)] : []
  }
  for (const rule of rules) {
    const fewer = dropped.filter(one => one !== rule)
    const improvement = dropAll(fewer)
    if (!improvement) continue
    dropped = fewer
    best = improvement
  }
  const { plan } = best
  return dropped.map(rule => bindingOf(kase, goal, rule, plan))
}

/** No rule is to blame: the job simply lasts that long, and perhaps then waits for the doors. */
function ownPace(kase: Case, { plan, handover }: Offer): Binding {
  const step = plan.steps.length - 1
  const from = plan.steps[step]!.end
  if (from >= handover) return { code: 'workItself', to: handover }
  const code = kase.newJob.steps[step]!.kind === 'hold' ? 'cure' : 'holdsDoor'
  return { code, step, from, to: handover }
}

/** Rules that cannot be told apart from the goal itself are left out. */
function counts(rule: Rule, goal: Goal): boolean {
  if (goal.kind === 'any' || goal.kind === 'anyAfterAsked') return rule.kind !== 'cure'
  if (rule.kind === 'horizon') return false
  return rule.kind !== 'hours' || goal.kind !== 'earlierAndNoMoreBlocked'
}
