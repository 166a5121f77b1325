import type { Solver } from './engine/solver.ts'
import type { Literal } from './literals.ts'
import type { Model } from './model.ts'
import type { Before, Taker } from './places.ts'
import type { FloorPlan } from './types.ts'

/**
 * Holds most of a floor's plan and frees some cars: of those that are held, bays, people and the order among
 * themselves stay, while times may shift. Returns the literals to assume.
 */
export function holdMost(model: Model, plan: FloorPlan, random: () => number): number[] {
  const middles = model.chains.map(({ job }) => {
    const { steps, handover } = plan[job.id]!
    return (steps[0]!.start + handover) / 2
  })
  const free = chooseFree(middles, random)
  return heldLiterals(model.solver, [...model.blocks, ...model.hands], model.orders, free)
}

/** Some cars to free: those about at the same time as one of them, or any. */
export function chooseFree(middles: readonly number[], random: () => number): Set<number> {
  const count = middles.length
  const size = Math.min(count, 2 + Math.floor(random() * Math.max(2, count / 3)))
  const any = () => Math.floor(random() * count)
  const seed = any()
  if (random() < 0.5) {
    const away = (car: number) => Math.abs(middles[car]! - middles[seed]!)
    const near = [...middles.keys()].sort((a, b) => away(a) - away(b))
    return new Set(near.slice(0, size))
  }
  const free = new Set([seed])
  while (free.size < size) free.add(any())
  return free
}

/** What the guide wishes of everything between cars that are not free. */
export function heldLiterals(
  solver: Solver,
  takers: readonly Taker[],
  orders: readonly Before[],
  free: ReadonlySet<number>,
): number[] {
  const held: number[] = []
  const hold = (literal: Literal) => {
    if (typeof literal === 'boolean') return
    if ((solver.guide[literal[0] >> 1] === 1) === (literal[0] % 2 === 0)) held.push(literal[0], literal[1])
  }
  for (const taker of takers) if (!free.has(taker.car)) for (const literal of taker.from) hold(literal)
  for (const { first, next, literal } of orders)
    if (!free.has(first.car) && !free.has(next.car)) hold(literal)
  return held
}
