import type { Span } from '../../calendar/spans.ts'
import { gridCeil, gridFloor } from '../prepare.ts'
import { addChain, type Chain, type StepVariable } from './chain.ts'
import { firstAtLeast } from './engine/links.ts'
import type { Solver } from './engine/solver.ts'
import { bayGroups, crewGroups, type Group, singly, takenOf } from './groups.ts'
import { addHands } from './hands.ts'
import { anyOf, choices, type Literal, not } from './literals.ts'
import { addBlocked, addMoves, addTardiness } from './objectives.ts'
import { type Before, type Block, forbidCircles, type Hand, shareGroups, type Taker } from './places.ts'
import { lentSpans } from './things.ts'
import type { FloorProblem } from './types.ts'

/** The floor as the solver sees it. */
export interface Model {
  readonly floor: FloorProblem
  readonly solver: Solver
  readonly chains: readonly Chain[]
  readonly bays: readonly Group[]
  readonly crew: readonly Group[]
  readonly blocks: readonly Block[]
  readonly hands: readonly Hand[]
  readonly orders: readonly Before[]
  /** What is made least, in this order: variables of tardiness, blocked minutes and moves. */
  readonly objectives: readonly number[]
}

/**
 * The model of a floor; the solver finds no solution in it where a job cannot be done in the horizon at all. `named`:
 * every bay and every person by name, also those that no rule can tell apart. Yields where it takes long.
 */
export function* buildModel(floor: FloorProblem, solver: Solver, named: boolean): Generator<void, Model> {
  const chains: Chain[] = []
  for (const job of floor.jobs) {
    yield
    chains.push(addChain(solver, floor, job))
  }
  const bays = named ? singly(floor.bays) : bayGroups(floor)
  const crew = named ? singly(floor.crew) : crewGroups(floor)
  const blocks = chains.flatMap((chain, car) => addBlocks(solver, floor, bays, chain, car))
  const hands = chains.flatMap((chain, car) => addHands(solver, floor, crew, chain, car))
  const stays = shareGroups(solver, bays, blocks)
  const turns = shareGroups(solver, crew, hands)
  const lending = shareThings(solver, floor, chains)
  const orders = [...stays, ...turns, ...lending]
  // A helper may come long after the step has begun, so what he waits for need not come before the step.
  const moves = orders.filter(({ next }) => !('helps' in next && next.helps))
  forbidCircles(
    solver,
    chains.map(chain => chain.steps),
    moves,
  )
  const objectives = [
    addTardiness(solver, floor, chains),
    yield* addBlocked(solver, floor, chains),
    addMoves(solver, floor, blocks),
  ]
  return { floor, solver, chains, bays, crew, blocks, hands, orders, objectives }
}

/** The stays of one car: which group of bays each may use, never while it is closed or booked. */
function addBlocks(
  solver: Solver,
  floor: FloorProblem,
  groups: readonly Group[],
  chain: Chain,
  car: number,
): Block[] {
  const runs: StepVariable[][] = []
  for (const step of chain.steps)
    if (step.step.sameBay && runs.length > 0) runs.at(-1)!.push(step)
    else runs.push([step])
  return runs.map((steps, r) => {
    const fits = groups.map(({ ids }) =>
      steps.every(
        ({ step }) =>
          (step.needs == null || floor.bays.find(bay => bay.id === ids[0])!.can.includes(step.needs)) &&
          (!step.bays || step.bays.includes(ids[0]!)),
      ),
    )
    const next = runs[r + 1]?.[0]
    const end = next ?? chain.last
    const ends = next?.starts ?? chain.homes
    const from = choices(solver, fits)
    groups.forEach(({ ids }, g) => {
      if (!from[g]) return
      const times = { start: steps[0]!, starts: steps[0]!.starts, end, ends }
      keepClear(solver, floor, from[g], times, takenOf(floor, ids[0]!))
    })
    return { car, steps, start: steps[0]!, starts: steps[0]!.starts, end, ends, from }
  })
}

/** What goes with the cars: free from drop-off to handover, and with one of them at a time. Returns the orders. */
function shareThings(solver: Solver, floor: FloorProblem, chains: readonly Chain[]): Before[] {
  const kept = chains.flatMap((chain, car) => (chain.job.things?.length ? [{ chain, car }] : []))
  const things = singly([...new Set(kept.flatMap(({ chain }) => chain.job.things!))].map(id => ({ id })))
  const takers = kept.map(({ chain: { job, first, last, homes }, car }): Taker => {
    const times = { start: first, starts: first.starts, end: last, ends: homes }
    keepClear(solver, floor, true, times, lentSpans(floor, job))
    return { ...times, car, from: things.map(({ ids }) => job.things!.includes(ids[0]!)) }
  })
  return shareGroups(solver, things, takers)
}

/** "If `when`, then it ends before each of these times or starts after it." */
function keepClear(
  solver: Solver,
  floor: FloorProblem,
  when: Literal,
  { start, starts, end, ends }: Pick<Taker, 'start' | 'starts' | 'end' | 'ends'>,
  spans: readonly Span[],
): void {
  for (const span of spans) {
    const lastEnd = firstAtLeast(ends, gridFloor(floor, span.from) + 1) - 1
    const firstStart = firstAtLeast(starts, gridCeil(floor, span.to))
    anyOf(solver, [not(when), [2 * end.x + 1, -lastEnd], [2 * start.x, firstStart]])
  }
}
