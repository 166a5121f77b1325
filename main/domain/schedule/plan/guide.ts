import { gridFloor } from '../prepare.ts'
import { firstAtLeast } from './engine/links.ts'
import type { Literal } from './literals.ts'
import type { Model } from './model.ts'
import type { FloorPlan } from './types.ts'

/** Lets the solver try the values of a plan first. */
export function guideBy(model: Model, plan: FloorPlan): void {
  const { solver, floor, bays, crew } = model
  const values = new Map<number, number>()
  const wish = (literal: Literal, yes: boolean) => {
    if (typeof literal === 'boolean') return
    solver.guide[literal[0] >> 1] = Number(yes === (literal[0] % 2 === 0))
  }
  for (const { job, steps } of model.chains)
    steps.forEach((step, i) => {
      const point = gridFloor(floor, plan[job.id]!.steps[i]!.start)
      const value = Math.min(firstAtLeast(step.starts, point), step.starts.length - 1)
      values.set(step.x, value)
      solver.guide[step.x] = value
    })
  const planned = (car: number, x: number) => {
    const { job, steps } = model.chains[car]!
    return plan[job.id]!.steps[steps.findIndex(step => step.x === x)]!
  }
  for (const block of model.blocks) {
    const { bay } = planned(block.car, block.start.x)
    for (const [g, { ids }] of bays.entries()) wish(block.from[g]!, ids.includes(bay))
  }
  const left = new Map<number, { crew: string[]; help: string[] }>()
  for (const hand of model.hands) {
    const { crew: team, help } = planned(hand.car, hand.step.x)
    const names = left.get(hand.step.x) ?? { crew: [...team], help: [...(help ?? [])] }
    left.set(hand.step.x, names)
    const own = names[hand.helps ? 'help' : 'crew']
    const group = crew.findIndex(({ ids }, g) => hand.from[g] !== false && own.some(id => ids.includes(id)))
    const at = own.findIndex(id => crew[group]?.ids.includes(id))
    if (at >= 0) own.splice(at, 1)
    for (const g of crew.keys()) wish(hand.from[g]!, g === group)
  }
  for (const { first, next, literal } of model.orders)
    wish(literal, first.ends[values.get(first.end.x)!]! <= next.starts[values.get(next.start.x)!]!)
}
