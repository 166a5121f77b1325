import { type OpenTime, openBetween } from './openTime.ts'
import type { Objective, Plan, Stay, Step } from './types.ts'

/** Opening minutes in which nobody works on the car, and the moves, of a plan for these steps. */
export function objectiveOf(hours: OpenTime, steps: readonly Step[], plan: Plan): Objective {
  const dropOff = plan.steps[0]!.start
  let handsOn = 0
  for (const step of steps) if (step.kind === 'work') handsOn += step.minutes
  return {
    dropOff,
    handover: plan.handover,
    blockedOpen: openBetween(hours, dropOff, plan.handover) - handsOn,
    moves: staysOf(plan).length - 1,
  }
}

/** The unbroken times a planned car holds its bays, in order, the last one to the handover. */
export function staysOf(plan: Plan): Stay[] {
  const stays: Stay[] = []
  const arrive = (bay: string, at: number) => {
    const last = stays.at(-1)
    if (last?.bay === bay) return
    if (last) stays[stays.length - 1] = { ...last, to: at }
    stays.push({ bay, from: at, to: plan.handover })
  }
  for (const step of plan.steps) {
    arrive(step.bay, step.start)
    if (step.moved) arrive(step.moved.bay, step.moved.at)
  }
  return stays
}

/** Minutes of the holds outside opening hours: cure that keeps no bay from its work. */
export function closedCureOf(hours: OpenTime, steps: readonly Step[], plan: Plan): number {
  let minutes = 0
  plan.steps.forEach((placed, i) => {
    if (steps[i]?.kind !== 'hold') return
    minutes += placed.end - placed.start - openBetween(hours, placed.start, placed.end)
  })
  return minutes
}
