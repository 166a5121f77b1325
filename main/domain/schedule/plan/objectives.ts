import { gridCeil, gridFloor, minuteAt } from '../prepare.ts'
import { promise } from '../promise.ts'
import { type Chain, forbidStarts, openAt } from './chain.ts'
import type { Solver } from './engine/solver.ts'
import { Sum, type Term } from './engine/sum.ts'
import { anyOf, not, yesOrNo } from './literals.ts'
import type { Block } from './places.ts'
import { asProblem, type FloorProblem } from './types.ts'

/** Minutes after the promised handover, times weight, over all cars. */
export function addTardiness(solver: Solver, floor: FloorProblem, chains: readonly Chain[]): number {
  const terms: Term[] = chains.map(({ job, last, homes }) => ({
    side: 2 * last.x,
    first: 0,
    row: homes.map(point => job.weight * Math.max(0, minuteAt(floor, point) - job.due)),
  }))
  return addTotal(solver, terms)
}

/** A variable that is at least the sum of the terms. */
function addTotal(solver: Solver, terms: readonly Term[]): number {
  const most = terms.reduce((sum, { row }) => sum + row.at(-1)!, 0)
  const total = solver.variable(0, Math.max(0, most))
  solver.watch(new Sum(terms, total), [2 * total + 1, ...terms.map(term => term.side)], true)
  return total
}

/**
 * Opening minutes in which a car keeps its bays and nobody works on it. Each car has a variable of its own, which
 * begins with what it would block on an empty floor: the promise knows that exactly. Yields
 * a car each.
 */
export function* addBlocked(
  solver: Solver,
  floor: FloorProblem,
  chains: readonly Chain[],
): Generator<void, number> {
  const terms: Term[] = []
  for (const chain of chains) {
    yield
    const { first, last, homes, job } = chain
    const handsOn = job.steps.reduce((sum, step) => sum + (step.kind === 'work' ? step.minutes : 0), 0)
    const come = openAt(chain, first.starts)
    const go = openAt(chain, homes)
    const latest = come.at(-1)!
    const most = Math.max(0, go.at(-1)! - come[0]! - handsOn)
    const alone = promise(asProblem(floor, job)).leastBlocked
    const least = alone.feasible ? alone.blockedOpen : 0
    const own = solver.variable(least, most)
    // The hours between, less what is worked: two rows that add up to it.
    const sum = new Sum(
      [
        { side: 2 * last.x, first: 0, row: go.map(minutes => minutes - latest - handsOn) },
        {
          side: 2 * first.x + 1,
          first: 1 - come.length,
          row: come.map(minutes => latest - minutes).reverse(),
        },
      ],
      own,
    )
    solver.watch(sum, [2 * own + 1, 2 * last.x, 2 * first.x + 1], true)
    terms.push({
      side: 2 * own,
      first: least,
      row: Int32Array.from({ length: most - least + 1 }, (_, i) => least + i),
    })
  }
  return addTotal(solver, terms)
}

/** Changes of bay inside a car's visit, and that they happen while the door is open. */
export function addMoves(solver: Solver, floor: FloorProblem, blocks: readonly Block[]): number {
  const terms: Term[] = []
  blocks.forEach((after, i) => {
    const before = blocks[i - 1]
    if (before?.car !== after.car) return
    const moved = yesOrNo(solver)
    after.from.forEach((here, g) => {
      if (before.from[g]) anyOf(solver, [not(before.from[g]), here, moved])
    })
    const doors = new Set<number>()
    for (const { from, to } of floor.open)
      for (let k = gridCeil(floor, from); k <= gridFloor(floor, to); k++) doors.add(k)
    forbidStarts(solver, after.start, moved, i => doors.has(after.starts[i]!))
    terms.push({ side: moved[0], first: 0, row: Int32Array.of(0, 1) })
  })
  return addTotal(solver, terms)
}
