import { type OpenTime, openBetween } from './openTime.ts'
import type { Violation } from './reasons.ts'
import { teamSize } from './steps.ts'
import type { PlannedStep, Problem, Step } from './types.ts'

/** A step of a plan to be checked. */
export interface StepAt {
  readonly problem: Problem
  readonly hours: OpenTime
  readonly step: Step
  readonly placed: PlannedStep
  /** Its place in the chain. */
  readonly index: number
}

/** Too few or too many people on a step, and people who cannot do it or are not there. */
export function checkTeam({ problem, hours, step, placed, index: i }: StepAt): Violation[] {
  const found: Violation[] = []
  const range = { step: i, from: placed.start, to: placed.end }
  const size = teamSize(step)
  const skill = step.kind === 'work' ? (step.skill ?? undefined) : undefined
  if (placed.crew.length !== size)
    found.push({
      ...range,
      code: 'crewSize',
      minutes: size,
      limit: placed.crew.length,
      ...(skill !== undefined && { skill }),
    })
  placed.crew.forEach((id, at) => {
    const person = problem.crew.find(one => one.id === id)
    if (!person) found.push({ ...range, code: 'unknownPerson', person: id })
    else {
      if (placed.crew.indexOf(id) !== at) found.push({ ...range, code: 'personTwice', person: id })
      if (skill !== undefined && !person.skills.includes(skill))
        found.push({ ...range, code: 'unskilled', person: id, skill })
      for (const away of person.away) {
        const from = Math.max(away.from, placed.start)
        const to = Math.min(away.to, placed.end)
        // Only opening minutes are worked, so an absence through the night takes nobody from a split step.
        if (from < to && openBetween(hours, from, to) > 0)
          found.push({ step: i, code: 'personAway', person: id, from: away.from, to: away.to })
      }
    }
  })
  return found
}
