import { gridCeil, gridFloor } from '../prepare.ts'
import { startsOf } from '../starts.ts'
import { skilledFor, teamSize } from '../steps.ts'
import { addChain, type Chain, forbidStarts, type StepVariable } from './chain.ts'
import { firstAtLeast } from './engine/links.ts'
import type { Solver } from './engine/solver.ts'
import { bayGroups, crewGroups, type Group, takenOf } from './groups.ts'
import { anyOf, type Literal, not, oneOf } from './literals.ts'
import { addBlocked, addMoves, addTardiness } from './objectives.ts'
import { type Before, type Block, forbidCircles, type Hand, shareGroups } from './places.ts'
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

/** The model of a floor; the solver finds no solution in it where a job cannot be done in the horizon at all. */
export function buildModel(floor: FloorProblem, solver: Solver): Model {
  const chains = floor.jobs.map(job => addChain(solver, floor, job))
  const bays = bayGroups(floor)
  const crew = crewGroups(floor)
  const blocks = chains.flatMap((chain, car) => addBlocks(solver, floor, bays, chain, car))
  const hands = chains.flatMap((chain, car) => addHands(solver, floor, crew, chain, car))
  const stays = shareGroups(solver, bays, blocks)
  const turns = shareGroups(solver, crew, hands)
  const orders = [...stays, ...turns]
  forbidCircles(
    solver,
    chains.map(chain => chain.steps),
    orders,
  )
  const objectives = [
    addTardiness(solver, floor, chains),
    addBlocked(solver, floor, chains),
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
      for (const span of takenOf(floor, ids[0]!)) {
        const lastEnd = firstAtLeast(ends, gridFloor(floor, span.from) + 1) - 1
        const firstStart = firstAtLeast(steps[0]!.starts, gridCeil(floor, span.to))
        anyOf(solver, [not(from[g]), [2 * end.x + 1, -lastEnd], [2 * steps[0]!.x, firstStart]])
      }
    })
    return { car, steps, start: steps[0]!, end, ends, from }
  })
}

/** One literal a group: which of the fitting ones is chosen; none may fit, and then nothing does. */
function choices(solver: Solver, fits: readonly boolean[]): Literal[] {
  const count = fits.filter(Boolean).length
  if (count === 0) {
    anyOf(solver, [])
    return fits.map(() => false)
  }
  const literals = oneOf(solver, count)
  return fits.map(fit => fit && literals.shift()!)
}

/** The people of one car's steps, one hand for each of a team; in a team the groups stand in order. */
function addHands(
  solver: Solver,
  floor: FloorProblem,
  groups: readonly Group[],
  chain: Chain,
  car: number,
): Hand[] {
  return chain.steps.flatMap(step => {
    const able = skilledFor(step.step, floor.crew)
    const fits = groups.map(({ ids }) => able.some(person => person.id === ids[0]))
    const team: Hand[] = Array.from({ length: teamSize(step.step) }, () => ({
      car,
      step,
      start: step,
      end: step,
      ends: step.endPoints,
      from: choices(solver, fits),
    }))
    team.forEach((hand, i) => {
      groups.forEach(({ ids }, g) => {
        const here = hand.from[g]!
        if (!here) return
        forbidStarts(solver, step, here, freeStarts(floor, chain, step, ids[0]!))
        const before = team[i - 1]
        if (!before) return
        // The same person cannot be two of the team; and of two groups, the first comes first.
        if (ids.length === 1) anyOf(solver, [not(here), not(before.from[g]!)])
        for (let later = g + 1; later < groups.length; later++)
          anyOf(solver, [not(here), not(before.from[later]!)])
      })
    })
    return team
  })
}

/** The grid points at which one person alone could begin the step and see it through. */
function freeStarts(floor: FloorProblem, chain: Chain, { step }: StepVariable, id: string): Set<number> {
  const person = chain.prepared.crew.filter(one => one.id === id)
  const alone = step.kind === 'work' ? { ...step, crew: 1 } : step
  const points = new Set<number>()
  for (const { from, to } of startsOf(
    { ...chain.prepared, crew: person },
    alone,
    chain.job.release,
    floor.horizon,
  ))
    for (let k = from; k <= to; k++) points.add(k)
  return points
}
