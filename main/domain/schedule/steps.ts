import type { Help, Person, Problem, Step } from './types.ts'

/** The step of the problem's job at a place in the chain, from 0; an error where the chain is shorter. */
export function stepAt({ newJob }: Problem, index: number): Step {
  const step = newJob.steps[index]
  if (!step) throw new Error(`Job ${newJob.id} has no step ${index + 1}`)
  return step
}

/** How many people the step takes; a step without a skill takes nobody. */
export function teamSize(step: Step): number {
  return step.kind === 'work' && step.skill !== null ? step.crew : 0
}

/** The people the step takes for a part of it; undefined where there is none, as where it takes nobody at all. */
export function helpOf(step: Step): Help | undefined {
  return step.kind === 'work' && step.skill !== null ? (step.help ?? undefined) : undefined
}

/** Those of the crew who have the skill of a step; nobody where it asks none. */
export function skilledFor<T extends Person>(step: Step, crew: readonly T[]): T[] {
  const skill = step.kind === 'work' ? step.skill : null
  return skill === null ? [] : crew.filter(person => person.skills.includes(skill))
}
