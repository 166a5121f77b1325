import { Solver } from './engine/solver.ts'
import { guideBy } from './guide.ts'
import { minimise, type Reached } from './minimise.ts'
import { buildModel } from './model.ts'
import { holdMost } from './neighbourhood.ts'
import { allParts, type LayParts } from './parts.ts'
import { readOut } from './readOut.ts'
import { costOf, isBetter, serialInsertion } from './seed.ts'
import type { FloorObjective, FloorPlan, FloorProblem } from './types.ts'

/** How far the floor is laid. */
export interface Laying {
  /** The best plan so far, and what it costs. */
  readonly plan: FloorPlan | undefined
  readonly objective: FloorObjective | undefined
  /** No plan costs less: tardiness always, the parts after it among plans with the best of those before. */
  readonly bound: FloorObjective
  /** Nothing better exists; without a plan: nothing fits at all. */
  readonly proven: boolean
  readonly conflicts: number
}

export interface LayOptions {
  readonly seed?: number
  /** A plan to begin with, as the floor stands now; it must obey all rules. */
  readonly present?: FloorPlan | undefined
  readonly parts?: Partial<LayParts>
}

/**
 * Lays the whole floor: yields after every short stretch of work, so that the caller may look at the clock, tell how
 * far it is, and stop; what was yielded last stands. Returns when the plan is proven. The same floor, seed and number
 * of yields give the same plan. Minutes throughout; the floor must be sound (`readFloor` refuses one that is not).
 */
export function* layFloor(floor: FloorProblem, options: LayOptions = {}): Generator<Laying, Laying> {
  const parts = { ...allParts, ...options.parts }
  const solver = new Solver(parts)
  let start = options.present
  const inserted = parts.insertion ? serialInsertion(floor) : undefined
  if (inserted && (!start || isBetter(costOf(floor, inserted), costOf(floor, start)))) start = inserted
  const model = buildModel(floor, solver)
  const task = {
    solver,
    objectives: model.objectives,
    read: () => readOut(model),
    costs: (plan: FloorPlan) => Object.values(costOf(floor, plan)),
    guide: (plan: FloorPlan) => guideBy(model, plan),
    hold: (plan: FloorPlan, random: () => number) => holdMost(model, plan, random),
  }
  const search = minimise<FloorPlan>(task, start, { seed: options.seed ?? 1, parts })
  for (;;) {
    const { value, done } = search.next()
    if (done) return told(value)
    yield told(value)
  }
}

function told({ plan, costs, bound, proven, conflicts }: Reached<FloorPlan>): Laying {
  return { plan, objective: costs && named(costs), bound: named(bound), proven, conflicts }
}

/** Costs in the order of the objectives. */
function named([weightedTardiness = 0, blockedOpen = 0, moves = 0]: readonly number[]): FloorObjective {
  return { weightedTardiness, blockedOpen, moves }
}
