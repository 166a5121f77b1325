import { addLink, type StepVariable } from './chain.ts'
import { Link } from './engine/links.ts'
import { Solver } from './engine/solver.ts'
import { minimise, type Reached } from './minimise.ts'
import { chooseFree, heldLiterals } from './neighbourhood.ts'
import { keepApart, type Past } from './noWait.ts'
import { allParts, type LayParts } from './parts.ts'
import { type Before, forbidCircles, shareGroups, type Taker } from './places.ts'
import type { JobShop, ShopStarts, Variant } from './types.ts'

interface Operations {
  readonly solver: Solver
  readonly steps: readonly (readonly StepVariable[])[]
  readonly takers: readonly Taker[]
  readonly orders: readonly Before[]
  /** The pairs of rigid jobs, without waits. */
  readonly pasts: readonly Past[]
  readonly makespan: number
}

/**
 * The shortest makespan of a classic job shop, by the same solver as the floor: one bay a machine, no crew, always
 * open. Yields as `layFloor` does.
 */
export function layShop(
  shop: JobShop,
  variant: Variant,
  options: { readonly seed?: number; readonly parts?: Partial<LayParts> } = {},
): Generator<Reached<ShopStarts>, Reached<ShopStarts>> {
  const parts = { ...allParts, ...options.parts }
  const model = buildShop(shop, variant, new Solver(parts))
  const { solver, steps, takers, orders, pasts, makespan } = model
  const task = {
    solver,
    objectives: [makespan],
    read: () => ({ plan: steps.map(chain => chain.map(({ x }) => solver.trail.least(x))) }),
    costs: (starts: ShopStarts) => [makespanOf(shop, starts)],
    guide: (starts: ShopStarts) => guideBy(model, starts),
    hold: (starts: ShopStarts, random: () => number) => {
      const middles = starts.map(chain => chain[0]! + chain.at(-1)!)
      const free = chooseFree(middles, random)
      const held = pasts.filter(({ a, b }) => !free.has(a) && !free.has(b))
      return [
        ...heldLiterals(solver, takers, orders, free),
        ...held.flatMap(({ literal: [side] }) => (solver.guide[side >> 1] ? [side, 1] : [side ^ 1, 0])),
      ]
    },
  }
  return minimise(task, undefined, { seed: options.seed ?? 1, parts })
}

export function makespanOf(shop: JobShop, starts: ShopStarts): number {
  return Math.max(...shop.map((job, j) => starts[j]!.at(-1)! + job.at(-1)![1]))
}

function buildShop(shop: JobShop, variant: Variant, solver: Solver): Operations {
  const horizon = shop.flat().reduce((sum, [, minutes]) => sum + minutes, 0)
  const points = Int32Array.from({ length: horizon + 1 }, (_, point) => point)
  const steps = shop.map(job => job.map(([, minutes]) => addOperation(solver, points, minutes)))
  const makespan = solver.variable(0, horizon)
  for (const chain of steps)
    chain.forEach((step, i) => {
      const next = chain[i + 1]
      if (next) addLink(solver, new Link(step.x, step.ends, next.x, next.starts))
      else addLink(solver, new Link(step.x, step.ends, makespan, points))
      if (next && variant === 'noWait') addLink(solver, new Link(next.x, next.starts, step.x, step.ends))
    })
  const machines = [...new Set(shop.flatMap(job => job.map(([machine]) => machine)))]
  const blocking = variant === 'blockingSwap' || variant === 'blockingNoSwap'
  if (variant === 'noWait') {
    const starts = steps.map(chain => chain[0]!.x)
    return { solver, steps, takers: [], orders: [], pasts: keepApart(solver, shop, starts, points), makespan }
  }
  const takers = shop.flatMap((job, car) =>
    job.map(([machine], i): Taker => {
      const step = steps[car]![i]!
      const next = blocking ? steps[car]![i + 1] : undefined
      const from = machines.map(one => one === machine)
      return {
        car,
        start: step,
        starts: step.starts,
        end: next ?? step,
        ends: next ? next.starts : step.ends,
        from,
      }
    }),
  )
  const orders = shareGroups(
    solver,
    machines.map(machine => ({ ids: [String(machine)] })),
    takers,
  )
  if (variant !== 'blockingSwap') forbidCircles(solver, steps, orders)
  return { solver, steps, takers, orders, pasts: [], makespan }
}

function addOperation(solver: Solver, points: Int32Array, minutes: number): StepVariable {
  const starts = points.subarray(0, points.length - minutes)
  const ends = starts.map(start => start + minutes)
  const step = { kind: 'hold', minutes } as const
  return { step, x: solver.variable(0, starts.length - 1), starts, ends }
}

function guideBy({ solver, steps, orders, pasts }: Operations, plan: ShopStarts): void {
  const values = new Map<number, number>()
  steps.forEach((chain, j) => {
    chain.forEach(({ x }, i) => {
      values.set(x, plan[j]![i]!)
      solver.guide[x] = plan[j]![i]!
    })
  })
  for (const { first, next, literal } of orders) {
    const yes = first.ends[values.get(first.end.x)!]! <= values.get(next.start.x)!
    solver.guide[literal[0] >> 1] = Number(yes === (literal[0] % 2 === 0))
  }
  for (const { a, b, gap, literal } of pasts)
    solver.guide[literal[0] >> 1] = Number(plan[b]![0]! - plan[a]![0]! >= gap.to)
}
