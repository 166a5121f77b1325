import { baysFor } from './layers.ts'
import { prepare } from './prepare.ts'
import type { Binding } from './reasons.ts'
import { helpOf, skilledFor, teamSize } from './steps.ts'
import type { Problem } from './types.ts'

/** Steps that can never be done in this shop, whatever is booked: no bay, too few people, no opening long enough. */
export function impossibleSteps(problem: Problem): Binding[] {
  const prepared = prepare(problem)
  const { openings, total } = prepared.hours
  const longest = Math.max(0, ...openings.map(({ from, to }) => to - from))
  return problem.newJob.steps.flatMap((step, i): Binding[] => {
    const found: Binding[] = []
    if (baysFor(prepared, step).length === 0)
      found.push({ code: 'noBay', step: i, ...(step.needs != null && { capability: step.needs }) })
    if (step.kind === 'hold') return found
    const size = teamSize(step) + (helpOf(step)?.crew ?? 0)
    const able = skilledFor(step, problem.crew).length
    if (able < size && step.skill !== null)
      found.push({ code: 'noSkill', step: i, skill: step.skill, minutes: size, limit: able })
    const room = step.split ? total : longest
    if (step.minutes > room) found.push({ code: 'tooLong', step: i, minutes: step.minutes, limit: room })
    return found
  })
}
