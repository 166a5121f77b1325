import type { Plan } from '../types.ts'
import { firstAtLeast } from './engine/links.ts'
import { Sum } from './engine/sum.ts'
import { anyOf, type Literal, not, yesOrNo } from './literals.ts'
import type { Model } from './model.ts'
import type { FloorPlan } from './types.ts'

/** Whether a car does not stay as it is: another bay, time or person in any of its steps. */
export function isChanged(present: Plan | undefined, plan: Plan): boolean {
  return !plan.steps.every((step, i) => {
    const now = present?.steps[i]
    return (
      now !== undefined &&
      step.bay === now.bay &&
      step.start === now.start &&
      samePeople(step.crew, now.crew) &&
      samePeople(step.help, now.help)
    )
  })
}

function samePeople(a: readonly string[] = [], b: readonly string[] = []): boolean {
  return a.length === b.length && a.every(id => b.includes(id))
}

/** How many cars do not stay as they are. */
export function countChanges(present: FloorPlan, plan: FloorPlan): number {
  return Object.entries(plan).filter(([id, own]) => isChanged(present[id], own)).length
}

/** A variable that counts the cars of a model by names that do not stay as they are. */
export function addChanges(model: Model, present: FloorPlan): number {
  const { solver, chains } = model
  const total = solver.variable(0, chains.length)
  const terms = chains.map((chain, car) => {
    const changed = yesOrNo(solver)
    for (const same of sameness(model, car, present[chain.job.id])) anyOf(solver, [changed, same])
    return { side: changed[0], first: 0, row: Int32Array.of(0, 1) }
  })
  solver.watch(new Sum(terms, total), [2 * total + 1, ...terms.map(term => term.side)], true)
  return total
}

/** What holds where a car stays as it is; something that never does where it cannot stay. */
function sameness(model: Model, car: number, present: Plan | undefined): Literal[] {
  const { floor, bays, crew } = model
  const chain = model.chains[car]!
  return chain.steps.flatMap((step, i): Literal[] => {
    const now = present?.steps[i]
    const point = now === undefined ? -1 : (now.start - (floor.gridFrom ?? 0)) / floor.grid
    const at = firstAtLeast(step.starts, point)
    if (!now || step.starts[at] !== point) return [false]
    const block = model.blocks.find(one => one.car === car && one.steps.includes(step))!
    const hands = (helps: boolean, ids: readonly string[] = []) => {
      const own = model.hands.filter(hand => hand.step === step && hand.helps === helps)
      // A team stands in the order of the groups (`addHands`).
      const places = ids.map(id => crew.findIndex(group => group.ids.includes(id))).sort((a, b) => a - b)
      if (own.length !== places.length) return [false]
      return own.map((hand, k) => hand.from[places[k]!] ?? false)
    }
    return [
      [2 * step.x, at],
      not([2 * step.x, at + 1]),
      block.from[bays.findIndex(({ ids }) => ids.includes(now.bay))] ?? false,
      ...hands(false, now.crew),
      ...hands(true, now.help),
    ]
  })
}
