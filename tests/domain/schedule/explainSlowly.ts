/** What binds an answer, by dropping each rule by itself and searching from scratch: the slow way that `explain` must equal. */
import { bindingOf } from '../../../main/domain/schedule/bindings.ts'
import { betterIn, type Goal, improvementOf, nearGoal } from '../../../main/domain/schedule/goals.ts'
import type { Binding } from '../../../main/domain/schedule/reasons.ts'
import { type Rule, rulesOf, without } from '../../../main/domain/schedule/relax.ts'
import type { Problem } from '../../../main/domain/schedule/types.ts'

/** The reasons of rules that bind each by itself, hours and horizon aside; null: there is none. */
export function aloneSlowly(problem: Problem, goal: Goal, counts: (rule: Rule) => boolean): Binding[] | null {
  const near = nearGoal(problem, goal)
  const found = rulesOf(near)
    .filter(rule => counts(rule) && rule.kind !== 'hours' && rule.kind !== 'horizon')
    .flatMap(rule => {
      const better = betterIn({ goal, near, reached: undefined }, without(near, rule))
      return better ? [{ rule, ...improvementOf(goal, better) }] : []
    })
  found.sort((a, b) => b.gain - a.gain)
  return found.length === 0
    ? null
    : found.slice(0, 4).map(({ rule, plan }) => bindingOf(problem, goal, rule, plan))
}
