import { type OpenTime, openBetween, partOfWork } from './openTime.ts'
import type { Violation } from './reasons.ts'
import { helpOf, teamSize } from './steps.ts'
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

/** Too few or too many people on a step or its help, and people who cannot do it or are not there. */
export function checkTeam({ problem, hours, step, placed, index: i }: StepAt): Violation[] {
  const found: Violation[] = []
  const skill = step.kind === 'work' ? (step.skill ?? undefined) : undefined
  const count = (people: readonly string[], size: number, from: number, to: number) => {
    if (people.length !== size)
      found.push({
        step: i,
        from,
        to,
        code: 'crewSize',
        minutes: size,
        limit: people.length,
        ...(skill !== undefined && { skill }),
      })
  }
  const named: string[] = []
  const look = (id: string, start: number, end: number) => {
    const range = { step: i, from: placed.start, to: placed.end }
    const person = problem.crew.find(one => one.id === id)
    if (!person) found.push({ ...range, code: 'unknownPerson', person: id })
    else {
      if (named.includes(id)) found.push({ ...range, code: 'personTwice', person: id })
      named.push(id)
      if (skill !== undefined && !person.skills.includes(skill))
        found.push({ ...range, code: 'unskilled', person: id, skill })
      for (const away of person.away) {
        const from = Math.max(away.from, start)
        const to = Math.min(away.to, end)
        // Only opening minutes are worked, so an absence through the night takes nobody from a split step.
        if (from < to && openBetween(hours, from, to) > 0)
          found.push({ step: i, code: 'personAway', person: id, from: away.from, to: away.to })
      }
    }
  }
  count(placed.crew, teamSize(step), placed.start, placed.end)
  for (const id of placed.crew) look(id, placed.start, placed.end)
  const help = helpOf(step)
  const part = help ? partOfWork(hours, placed.start, help) : { from: placed.start, to: placed.end }
  count(placed.help ?? [], help?.crew ?? 0, part.from, part.to)
  for (const id of placed.help ?? []) look(id, part.from, part.to)
  return found
}
