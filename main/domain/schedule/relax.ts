import { baysFor } from './layers.ts'
import type { Problem, Step } from './types.ts'

/** One rule of a problem that may be dropped to see whether it is what stands in the way. */
export type Rule =
  | { readonly kind: 'bay'; readonly bay: string }
  | { readonly kind: 'skill'; readonly skill: string }
  | { readonly kind: 'recoatWait'; readonly step: number }
  | { readonly kind: 'recoatLimit'; readonly step: number }
  | { readonly kind: 'cure'; readonly step: number }
  | { readonly kind: 'pin'; readonly step: number }
  | { readonly kind: 'onlyBay'; readonly step: number }
  | { readonly kind: 'hours' }
  | { readonly kind: 'horizon' }

/** The rules a problem has that could bind: what is not there is not listed. */
export function rulesOf(problem: Problem): Rule[] {
  const rules: Rule[] = []
  const { steps } = problem.newJob
  const useful = new Set(steps.flatMap(step => baysFor(problem, step).map(bay => bay.id)))
  for (const { id, closed } of problem.bays)
    if (useful.has(id) && (closed.length > 0 || problem.fixed.some(stay => stay.bay === id)))
      rules.push({ kind: 'bay', bay: id })
  const skills = new Set(steps.flatMap(step => (step.kind === 'work' && step.skill ? [step.skill] : [])))
  for (const skill of skills) rules.push({ kind: 'skill', skill })
  steps.forEach((step, i) => {
    if (i > 0 && (step.waitMin ?? 0) > 0) rules.push({ kind: 'recoatWait', step: i })
    if (i > 0 && step.waitMax != null) rules.push({ kind: 'recoatLimit', step: i })
    if (step.kind === 'hold') rules.push({ kind: 'cure', step: i })
    if (step.startFrom != null || step.startTo != null) rules.push({ kind: 'pin', step: i })
    if ((i > 0 && step.sameBay) || step.bays) rules.push({ kind: 'onlyBay', step: i })
  })
  rules.push({ kind: 'hours' }, { kind: 'horizon' })
  return rules
}

/** The problem without one of its rules, everything else as it is. */
export function without(problem: Problem, rule: Rule): Problem {
  const change = (only: number | undefined, edit: (step: Step) => Step): Problem => ({
    ...problem,
    newJob: {
      ...problem.newJob,
      steps: problem.newJob.steps.map((step, i) => (only === undefined || i === only ? edit(step) : step)),
    },
  })
  switch (rule.kind) {
    case 'bay':
      return {
        ...problem,
        fixed: problem.fixed.filter(stay => stay.bay !== rule.bay),
        bays: problem.bays.map(bay => (bay.id === rule.bay ? { ...bay, closed: [] } : bay)),
      }
    case 'skill':
      return change(undefined, step =>
        step.kind === 'work' && step.skill === rule.skill ? { ...step, skill: null } : step,
      )
    case 'recoatWait':
      return change(rule.step, step => ({ ...step, waitMin: null }))
    case 'recoatLimit':
      return change(rule.step, step => ({ ...step, waitMax: null }))
    case 'cure':
      return change(rule.step, step => ({ ...step, minutes: 1 }))
    case 'pin':
      return change(rule.step, step => ({ ...step, startFrom: null, startTo: null }))
    case 'onlyBay':
      return change(rule.step, step => ({ ...step, sameBay: false, bays: undefined }))
    case 'hours':
      return { ...problem, open: [{ from: problem.newJob.release, to: problem.horizon }] }
    case 'horizon': {
      // Nothing is known of the hours after it, so they are taken as open: what fails even then is not its fault.
      const longer = problem.horizon + roomFor(problem)
      return { ...problem, horizon: longer, open: [...problem.open, { from: problem.horizon, to: longer }] }
    }
  }
}

/** Minutes in which the whole job surely fits once nothing else is in the way. */
function roomFor(problem: Problem): number {
  let room = 2 * problem.grid
  for (const step of problem.newJob.steps) room += step.minutes + (step.waitMin ?? 0) + problem.grid
  return room
}
