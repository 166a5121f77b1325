import { baysFor } from './layers.ts'
import { prepare } from './prepare.ts'
import type { Binding } from './reasons.ts'
import { teamSize } from './starts.ts'
import type { Problem } from './types.ts'

/** Steps that can never be done in this shop, whatever is booked: no bay, too few people, no opening long enough. */
export function impossibleSteps(problem: Problem): Binding[] {
  const prepared = prepare(problem)
  const { from, to, total } = prepared.hours
  const longest = from.reduce((most, start, j) => Math.max(most, to[j]! - start), 0)
  return problem.newJob.steps.flatMap((step, i): Binding[] => {
    const found: Binding[] = []
    if (baysFor(prepared, step).length === 0)
      found.push({ code: 'noBay', step: i, ...(step.needs != null && { capability: step.needs }) })
    if (step.kind === 'hold') return found
    const size = teamSize(step)
    if (size > 0) {
      const able = problem.crew.filter(person => person.skills.includes(step.skill!)).length
      if (able < size)
        found.push({ code: 'noSkill', step: i, skill: step.skill!, minutes: size, limit: able })
    }
    const room = step.split ? total : longest
    if (step.minutes > room) found.push({ code: 'tooLong', step: i, minutes: step.minutes, limit: room })
    return found
  })
}
