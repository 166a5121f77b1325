import { addChanges, countChanges } from './changes.ts'
import { Solver } from './engine/solver.ts'
import { guideBy } from './guide.ts'
import { minimise, type Reached } from './minimise.ts'
import { buildModel, type Model } from './model.ts'
import { holdMost } from './neighbourhood.ts'
import { allParts, type LayParts } from './parts.ts'
import { readOut } from './readOut.ts'
import { repaired } from './repair.ts'
import { costOf, isBetter, serialInsertion } from './seed.ts'
import { isSound, tidied } from './tidy.ts'
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
  /** The floor as it stands: begun with where it obeys all rules, and left as it is where nothing is gained. */
  readonly present?: FloorPlan | undefined
  readonly parts?: Partial<LayParts>
}

/**
 * Lays the whole floor: yields after every short stretch of work, so that the caller may look at the clock, tell how
 * far it is, and stop; what was yielded last stands. Returns when the plan is proven. The same floor, seed and number
 * of yields give the same plan. Minutes throughout; the floor must be sound (`readFloor` refuses one that is not).
 */
export function* layFloor(floor: FloorProblem, options: LayOptions = {}): Generator<Laying, Laying> {
  const { present } = options
  const task = { floor, present, parts: { ...allParts, ...options.parts }, seed: options.seed ?? 1 }
  const start = yield* firstPlan(task)
  const laid = yield* layCosts(task, start)
  const { plan, objective } = laid
  if (!present || !plan || !objective?.changes) return laid
  return yield* layChanges(task, plan, objective)
}

interface LayTask {
  readonly floor: FloorProblem
  readonly present: FloorPlan | undefined
  readonly parts: LayParts
  readonly seed: number
}

/** The best of the present plan, that plan repaired where it cannot stay, and what serial insertion finds. */
function* firstPlan({ floor, present, parts }: LayTask): Generator<Laying, FloorPlan | undefined> {
  const kept = present && isSound(floor, present) ? present : undefined
  const told = (plan: FloorPlan | undefined): Laying => ({
    plan,
    objective: plan && named(costsOf(floor, plan, present), present),
    bound: named([0, 0, 0], present),
    proven: false,
    conflicts: 0,
  })
  let best = kept
  if (present && !kept && parts.repair) best = yield* waiting(repaired(floor, present), told(undefined))
  if (!parts.insertion) return best
  const inserted = yield* waiting(serialInsertion(floor), told(best))
  if (!inserted || (best && !isBetter(costOf(floor, inserted), costOf(floor, best)))) return best
  return present ? tidied(floor, inserted, present) : inserted
}

/** What a plan costs, in the order of the objectives. */
function costsOf(floor: FloorProblem, plan: FloorPlan, present: FloorPlan | undefined): number[] {
  return [...Object.values(costOf(floor, plan)), ...(present ? [countChanges(present, plan)] : [])]
}

/** The parts that say how good a floor is, to their proof; equal ones differ in how much stays as it is. */
function* layCosts(task: LayTask, start: FloorPlan | undefined): Generator<Laying, Laying> {
  const { floor, present } = task
  const solver = new Solver(task.parts)
  const costs = (plan: FloorPlan) => costsOf(floor, plan, present)
  const told = ({ plan, costs, bound, proven, conflicts }: Reached<FloorPlan>): Laying => {
    const objective = costs && named(costs, present)
    // Without a change there is nothing left to make less.
    return { plan, objective, bound: named(bound, present), conflicts, proven: proven && !objective?.changes }
  }
  const before = told({
    plan: start,
    costs: start && costs(start),
    bound: [0, 0, 0],
    proven: false,
    conflicts: 0,
  })
  const model = yield* waiting(buildModel(floor, solver, false), before)
  return yield* telling(search(task, model, start, model.objectives, costs), told)
}

/** The fewest cars changed among plans that cost no more: bays and people by name, the other parts held. */
function* layChanges(
  task: LayTask,
  start: FloorPlan,
  { changes: _, ...best }: FloorObjective,
): Generator<Laying, Laying> {
  const { floor, parts } = task
  const present = task.present!
  const solver = new Solver(parts)
  const costs = (plan: FloorPlan) => [countChanges(present, plan)]
  const told = ({ plan, costs, bound, proven, conflicts }: Reached<FloorPlan>): Laying => ({
    plan,
    objective: { ...best, changes: costs![0]! },
    bound: { ...best, changes: bound[0]! },
    proven,
    conflicts,
  })
  const before = told({ plan: start, costs: costs(start), bound: [0], proven: false, conflicts: 0 })
  const model = yield* waiting(buildModel(floor, solver, true), before)
  model.objectives.forEach((total, i) => {
    solver.fix(2 * total + 1, -Object.values(best)[i]!)
  })
  const changes = addChanges(model, present)
  return yield* telling(search(task, model, start, [changes], costs), told)
}

function search(
  { floor, present, parts, seed }: LayTask,
  model: Model,
  start: FloorPlan | undefined,
  objectives: readonly number[],
  costs: (plan: FloorPlan) => readonly number[],
): Generator<Reached<FloorPlan>, Reached<FloorPlan>> {
  const read = () => {
    const found = readOut(model)
    return 'clause' in found || !present ? found : { plan: tidied(floor, found.plan, present) }
  }
  return minimise<FloorPlan>(
    {
      solver: model.solver,
      objectives,
      read,
      costs,
      guide: plan => guideBy(model, plan),
      hold: (plan, random) => holdMost(model, plan, random),
    },
    start,
    { seed, parts },
  )
}

/** Yields what stands meanwhile at every turn of some work. */
function* waiting<T>(work: Generator<void, T>, meanwhile: Laying): Generator<Laying, T> {
  for (;;) {
    const { value, done } = work.next()
    if (done) return value
    yield meanwhile
  }
}

function* telling(
  search: Generator<Reached<FloorPlan>, Reached<FloorPlan>>,
  told: (reached: Reached<FloorPlan>) => Laying,
): Generator<Laying, Laying> {
  for (;;) {
    const { value, done } = search.next()
    if (done) return told(value)
    yield told(value)
  }
}

/** Costs in the order of the objectives. */
function named(
  [weightedTardiness = 0, blockedOpen = 0, moves = 0, changes = 0]: readonly number[],
  present: FloorPlan | undefined,
): FloorObjective {
  return { weightedTardiness, blockedOpen, moves, ...(present && { changes }) }
}
