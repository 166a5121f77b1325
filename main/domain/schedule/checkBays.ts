import { staysOf } from './measure.ts'
import type { Violation } from './reasons.ts'
import { stepAt } from './steps.ts'
import type { Plan, Problem, Stay, Step } from './types.ts'

/** Bays that cannot take a step, and stays over somebody else's stay or a closure. */
export function checkBays(problem: Problem, plan: Plan): Violation[] {
  const found: Violation[] = []
  plan.steps.forEach((placed, i) => {
    const step = stepAt(problem, i)
    found.push(...checkFit(problem, step, placed.bay, i))
    if (placed.moved) found.push(...checkFit(problem, step, placed.moved.bay, i))
    const before = plan.steps[i - 1]
    const stood = before?.moved?.bay ?? before?.bay
    if (step.sameBay && stood !== undefined && stood !== placed.bay)
      found.push({ code: 'leftBay', step: i, bay: stood, from: placed.start, to: placed.end })
  })
  for (const stay of staysOf(plan)) found.push(...checkStay(problem, stay))
  return found
}

function checkFit(problem: Problem, step: Step, id: string, i: number): Violation[] {
  const bay = problem.bays.find(one => one.id === id)
  if (!bay) return [{ code: 'unknownBay', step: i, bay: id }]
  if (step.needs != null && !bay.can.includes(step.needs))
    return [{ code: 'unfitBay', step: i, bay: id, capability: step.needs }]
  if (step.bays && !step.bays.includes(id)) return [{ code: 'unfitBay', step: i, bay: id }]
  return []
}

function checkStay(problem: Problem, stay: Stay): Violation[] {
  const over = (span: { from: number; to: number }) => span.from < stay.to && stay.from < span.to
  const taken = problem.fixed
    .filter(other => other.bay === stay.bay && over(other))
    .map((other): Violation => {
      const { bay, from, to, job } = other
      return { code: 'bayTaken', bay, from, to, ...(job !== undefined && { other: job }) }
    })
  const closed = (problem.bays.find(bay => bay.id === stay.bay)?.closed ?? [])
    .filter(over)
    .map((span): Violation => ({ code: 'bayClosed', bay: stay.bay, from: span.from, to: span.to }))
  return [...taken, ...closed]
}
