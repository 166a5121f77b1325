import { bindingOf, opening } from './bindings.ts'
import { betterIn, type Goal, type Ground, groundOf, type Improvement, improvementOf } from './goals.ts'
import { impossibleSteps } from './impossible.ts'
import type { Binding } from './reasons.ts'
import { type Rule, rulesOf, without } from './relax.ts'
import { stepAt } from './steps.ts'
import type { NoOffer, Offer, Problem } from './types.ts'

/** How many reasons that each stand alone a desk reads before it stops reading. */
const MOST = 4

/**
 * What keeps this answer from being better, or from being there: found by dropping one rule at a time (a bay's
 * bookings, a skill's absences, a wait, a cure, the hours) and searching again, so a reason is never guessed. Named
 * are the rules without which the answer would be better, those that cost most first; where no single one is to
 * blame, a smallest set that is. Rules that can only stand in the way are dropped many at once: where even that betters
 * nothing, none of them is to blame.
 */
export function explain(problem: Problem, answer: Offer | NoOffer): Binding[] {
  if (!answer.feasible) {
    const impossible = impossibleSteps(problem)
    if (impossible.length > 0) return impossible
    return bindings(problem, { kind: answer.kind === 'askedDay' ? 'anyAfterAsked' : 'any' })
  }
  if (answer.kind === 'soonest') return bindings(problem, { kind: 'earlierHandover', than: answer })
  if (answer.kind === 'leastBlocked')
    return bindings(problem, { kind: 'earlierAndNoMoreBlocked', than: answer })
  const arrival = bindings(problem, { kind: 'earlierDropOff', than: answer })
  const departure = bindings(problem, { kind: 'earlierHandoverSameDropOff', than: answer })
  const known = new Set(arrival.map(reason => JSON.stringify(reason)))
  return [...arrival, ...departure.filter(reason => !known.has(JSON.stringify(reason)))]
}

function bindings(problem: Problem, goal: Goal): Binding[] {
  const ground = groundOf(problem, goal)
  const rules = rulesOf(ground.near).filter(rule => counts(rule, goal))
  // A longer horizon or longer hours would better nearly everything: they are named when nothing else is to blame.
  const others = rules.filter(rule => rule.kind !== 'hours' && rule.kind !== 'horizon')
  const horizon = rules.filter(rule => rule.kind === 'horizon')
  const hours = rules.filter(rule => rule.kind === 'hours')
  const told = ({ rule, improvement }: Culprit) => bindingOf(problem, goal, rule, improvement.plan)
  const culprits =
    alone(ground, others) ??
    together(ground, others) ??
    alone(ground, horizon) ??
    alone(ground, hours) ??
    together(ground, rules)
  if (culprits) return culprits.map(told)
  // A drop-off that no rule holds back is the asked one.
  return 'than' in goal && goal.kind !== 'earlierDropOff' ? [ownPace(problem, goal.than)] : []
}

/** A rule to blame, and the better answer there is without it. */
interface Culprit {
  readonly rule: Rule
  readonly improvement: Improvement
}

/** The rules that bind each by itself, those that cost most first; the rest would go unread. */
function alone(ground: Ground, rules: readonly Rule[]): Culprit[] | undefined {
  const groups = Object.values(Object.groupBy(rules, kindOfGroup))
  const found = groups.flatMap(group => amongst(ground, group ?? []))
  const place = ({ rule }: Culprit) => rules.indexOf(rule)
  found.sort((a, b) => b.improvement.gain - a.improvement.gain || place(a) - place(b))
  return found.length > 0 ? found.slice(0, MOST) : undefined
}

/**
 * What may be dropped in one go: rules that only stand in the way, so that without more of them there are never fewer
 * plans. A shorter cure is no such thing, as what must follow it within a time must then follow sooner; nor are hours, in
 * which split work lasts longer.
 */
function kindOfGroup(rule: Rule): string {
  if (rule.kind === 'cure') return `cure ${rule.step}`
  return rule.kind === 'hours' || rule.kind === 'horizon' ? rule.kind : 'in the way'
}

/** Those of a group that bind by themselves, taken apart as long as a part may hold one. */
function amongst(ground: Ground, group: readonly Rule[]): Culprit[] {
  const better = betterIn(ground, group.reduce(without, ground.near))
  if (!better) return []
  const [rule] = group
  if (rule && group.length === 1) return [{ rule, improvement: improvementOf(ground.goal, better) }]
  return partsOf(group).flatMap(part => amongst(ground, part))
}

/** What stands in the way, told apart as bays, skills and the job's own rules; of one kind, halved. */
function partsOf(group: readonly Rule[]): (readonly Rule[])[] {
  const kinds = Map.groupBy(group, rule => ('step' in rule ? 'step' : rule.kind))
  if (kinds.size > 1) return [...kinds.values()]
  const half = group.length >> 1
  return [group.slice(0, half), group.slice(half)]
}

/**
 * A smallest set of rules that bind only together: all are dropped, then each is kept again as long as the rest
 * suffices, the job's own first, so that what others have booked is left to blame. Told whole: a part of it is not true.
 */
function together(ground: Ground, rules: readonly Rule[]): Culprit[] | undefined {
  const dropAll = (some: readonly Rule[]) => betterIn(ground, some.reduce(without, ground.near))
  let dropped = [...rules]
  let better = dropAll(dropped)
  if (!better) return undefined
  for (const rule of rules.toReversed()) {
    const fewer = dropped.filter(one => one !== rule)
    const found = dropAll(fewer)
    if (!found) continue
    dropped = fewer
    better = found
  }
  const improvement = improvementOf(ground.goal, better)
  return dropped.map(rule => ({ rule, improvement }))
}

/** No rule is to blame: the job simply lasts that long, and perhaps then waits for the doors. */
function ownPace(problem: Problem, { plan, handover }: Offer): Binding {
  const step = plan.steps.length - 1
  const from = plan.steps[step]!.end
  const opens = opening(problem, from)
  if (stepAt(problem, step).kind === 'hold') return { code: 'cure', step, from, ...opens }
  return opens.to === undefined
    ? { code: 'workItself', to: handover }
    : { code: 'holdsDoor', step, from, ...opens }
}

/** Rules that cannot be told apart from the goal itself are left out. */
function counts(rule: Rule, goal: Goal): boolean {
  if (goal.kind === 'any' || goal.kind === 'anyAfterAsked') return rule.kind !== 'cure'
  if (rule.kind === 'horizon') return false
  return rule.kind !== 'hours' || goal.kind !== 'earlierAndNoMoreBlocked'
}
