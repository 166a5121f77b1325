import { prepare } from './ground.ts'
import { baysFor } from './layers.ts'
import type { Case, Step } from './types.ts'

/** One rule of a case that may be dropped to see whether it is what stands in the way. */
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

/** The rules a case has that could bind: what is not there is not listed. */
export function rulesOf(kase: Case): Rule[] {
  const rules: Rule[] = []
  const { steps } = kase.newJob
  const ground = prepare({ ...kase, fixed: [], crew: [] })
  const useful = new Set(steps.flatMap(step => baysFor(ground, step)))
  kase.bays.forEach((bay, b) => {
    if (useful.has(b) && (bay.closed.length > 0 || kase.fixed.some(stay => stay.bay === bay.id)))
      rules.push({ kind: 'bay', bay: bay.id })
  })
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

/** The case without one of its rules, everything else as it is. */
export function without(kase: Case, rule: Rule): Case {
  const change = (only: number | undefined, edit: (step: Step) => Step): Case => ({
    ...kase,
    newJob: {
      ...kase.newJob,
      steps: kase.newJob.steps.map((step, i) => (only === undefined || i === only ? edit(step) : step)),
    },
  })
  switch (rule.kind) {
    case 'bay':
      return {
        ...kase,
        fixed: kase.fixed.filter(stay => stay.bay !== rule.bay),
        bays: kase.bays.map(bay => (bay.id === rule.bay ? { ...bay, closed: [] } : bay)),
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
      return { ...kase, open: [{ from: kase.newJob.release, to: kase.horizon }] }
    case 'horizon': {
      // Nothing is known of the hours after it, so they are taken as open: what fails even then is not its fault.
      const longer = kase.horizon + roomFor(kase)
      return { ...kase, horizon: longer, open: [...kase.open, { from: kase.horizon, to: longer }] }
    }
  }
}

/** Minutes in which the whole job surely fits once nothing else is in the way. */
function roomFor(kase: Case): number {
  let room = 2 * kase.grid
  for (const step of kase.newJob.steps) room += step.minutes + (step.waitMin ?? 0) + kase.grid
  return room
}
