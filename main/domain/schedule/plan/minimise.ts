import type { Solver } from './engine/solver.ts'
import type { LayParts } from './parts.ts'
import { randomFrom } from './random.ts'

/** A problem in the solver, with the way from its values to plans and back. */
export interface Task<P> {
  readonly solver: Solver
  /** Variables to make least, the first first. */
  readonly objectives: readonly number[]
  /** The plan of the values now in the solver; or a clause that forbids them, where no rule in the solver does. */
  readonly read: () => { readonly plan: P } | { readonly clause: readonly number[] }
  readonly costs: (plan: P) => readonly number[]
  /** Lets the solver try the values of a plan first. */
  readonly guide: (plan: P) => void
  /** Literals that hold most of the plan the guide was set by, freeing some cars. */
  readonly hold: (plan: P, random: () => number) => number[]
}

/** How far it is. */
export interface Reached<P> {
  readonly plan: P | undefined
  readonly costs: readonly number[] | undefined
  /** No plan costs less: the first part always, the next ones among plans with the best of the parts before. */
  readonly bound: readonly number[]
  /** Nothing better exists; without a plan: there is none at all. */
  readonly proven: boolean
  readonly conflicts: number
}

/** Conflicts of one run in a neighbourhood, runs between two steps of the proof, and conflicts of its shortest. */
const smallRun = 60
const runsBetween = 4
const shortest = 100

/**
 * Makes the objectives least in their order, yielding after every short run. Between runs of the proof (restarts with
 * everything free) the best plan is improved in neighbourhoods; both learn from the same conflicts, and whatever was
 * learned stays true because the goals are assumptions, never constraints.
 */
export function* minimise<P>(
  task: Task<P>,
  start: P | undefined,
  { seed, parts }: { readonly seed: number; readonly parts: LayParts },
): Generator<Reached<P>, Reached<P>> {
  const { solver, objectives } = task
  const random = randomFrom(seed)
  let best: { readonly plan: P; readonly costs: readonly number[] } | undefined
  if (start !== undefined) best = { plan: start, costs: task.costs(start) }
  let level = 0
  const leastOf = (i: number) => {
    solver.back(0)
    return solver.trail.least(objectives[i]!)
  }
  let last: Reached<P>
  const told = (): Reached<P> => {
    last = {
      plan: best?.plan,
      costs: best?.costs,
      bound: objectives.map((_, i) => leastOf(i)),
      proven: level === objectives.length,
      conflicts: solver.conflicts,
    }
    return last
  }
  const settled = () => {
    level = objectives.length
    return told()
  }
  /** One run towards a goal; what it finds is kept. Yields what was told last where it takes long. */
  function* attempt(goal: readonly number[], limit: number) {
    let outcome = solver.run(goal, limit)
    while (outcome === 'paused') {
      yield last
      outcome = solver.goOn()
    }
    if (outcome !== 'found') return outcome
    const read = task.read()
    if ('clause' in read) {
      solver.clause(read.clause)
      return 'limit'
    }
    const { plan } = read
    const costs = task.costs(plan)
    if (!best || isLess(costs, best.costs)) best = { plan, costs }
    task.guide(best.plan)
    return outcome
  }
  if (!solver.settle()) return settled()
  if (best) task.guide(best.plan)
  yield told()
  /** The share of the gap that the next bisection asks to be closed from above. */
  let share = 0.5
  for (let round = 1; ; round++) {
    if (!best) {
      if ((yield* attempt([], shortest * round)) === 'none') return settled()
      yield told()
      continue
    }
    const total = objectives[level]!
    const now = best.costs[level]!
    const least = leastOf(level)
    if (least >= now) {
      // Settled for good; then the next part is made less.
      solver.fix(2 * total + 1, -now)
      if (++level === objectives.length || !solver.settle()) return settled()
      continue
    }
    const bisect = parts.bisection && round % 2 === 0 && now - least > 1
    const goal = bisect ? least + Math.floor((now - 1 - least) * (1 - share)) : now - 1
    const outcome = yield* attempt([2 * total + 1, -goal], shortest * luby(round >> 1 || 1))
    if (outcome === 'none') {
      // Nothing reaches the goal, so it is a bound; the solver has it unless only the model as a whole refused.
      solver.fix(2 * total, goal + 1)
      if (!solver.settle()) return settled()
    }
    if (bisect) share = outcome === 'limit' ? Math.max(0.05, share * 0.7) : 0.5
    yield told()
    if (!parts.neighbourhoods) continue
    for (let i = 0; i < runsBetween; i++) {
      const goal = goalFrom(objectives, best.costs, level, random)
      yield* attempt([...goal, ...task.hold(best.plan, random)], smallRun)
      yield told()
    }
  }
}

/** Whether the first costs that differ are less. */
export function isLess(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((cost, at) => cost !== b[at])
  return i >= 0 && a[i]! < b[i]!
}

/** "Less at one part, no more in the parts before it", of those that are not settled. */
function goalFrom(
  objectives: readonly number[],
  costs: readonly number[],
  level: number,
  random: () => number,
): number[] {
  const at = level + Math.floor(random() * (objectives.length - level))
  const goal: number[] = []
  for (let i = level; i <= at; i++) goal.push(2 * objectives[i]! + 1, (i === at ? 1 : 0) - costs[i]!)
  return goal
}

/** 1, 1, 2, 1, 1, 2, 4, ...: run lengths that suit every problem within a constant (Luby, Sinclair, Zuckerman 1993). */
export function luby(i: number): number {
  let size = 1
  while (size < i + 1) size *= 2
  if (size === i + 1) return size / 2
  return luby(i - size / 2 + 1)
}
