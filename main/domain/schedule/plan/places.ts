import { addLink, type StepVariable } from './chain.ts'
import { Link, type Rising } from './engine/links.ts'
import { type Edge, Order } from './engine/order.ts'
import { Room } from './engine/room.ts'
import type { Solver } from './engine/solver.ts'
import type { Group } from './groups.ts'
import { anyOf, condition, type Literal, not, yesOrNo } from './literals.ts'

/** Something that takes one place of one group: a stay takes a bay, a step a person. */
export interface Taker {
  /** Takers of the same car follow each other anyway. */
  readonly car: number
  /** The variables the start and the end hang on, and the time each of their values stands for. */
  readonly start: StepVariable
  readonly starts: Rising
  readonly end: StepVariable
  readonly ends: Rising
  /** By group: whether it is taken from there. */
  readonly from: readonly Literal[]
}

/** A run of steps that share a bay, and so one stay at the least. */
export interface Block extends Taker {
  readonly steps: readonly StepVariable[]
}

/** One person of a step's team, or one who comes to its help for a part of it. */
export interface Hand extends Taker {
  readonly step: StepVariable
  readonly helps: boolean
}

/** "This one before that one", where they share a group of one place. */
export interface Before {
  readonly first: Taker
  readonly next: Taker
  readonly literal: readonly [number, number]
}

/**
 * Sees to it that no group is taken more often than it has places: one place by the order of each pair, several by
 * counting. Returns the orders.
 */
export function shareGroups(solver: Solver, groups: readonly Group[], takers: readonly Taker[]): Before[] {
  const orders: Before[] = []
  takers.forEach((a, i) => {
    for (const b of takers.slice(0, i)) {
      if (a.car === b.car) continue
      const shared = groups.flatMap((group, g) =>
        group.ids.length === 1 && a.from[g] && b.from[g] ? [[not(a.from[g]), not(b.from[g])]] : [],
      )
      if (shared.length === 0) continue
      const before = yesOrNo(solver)
      const surely = shared.some(pair => pair.every(one => one === false))
      const after = surely ? (not(before) as readonly [number, number]) : yesOrNo(solver)
      orders.push({ first: a, next: b, literal: before }, { first: b, next: a, literal: after })
      if (!surely) anyOf(solver, [not(before), not(after)])
      for (const pair of shared) anyOf(solver, [...pair, before, after])
    }
  })
  for (const { first, next, literal } of orders)
    addLink(solver, new Link(first.end.x, first.ends, next.start.x, next.starts, literal))
  groups.forEach((group, g) => {
    if (group.ids.length === 1) return
    const uses = takers.flatMap(({ start, starts, end, ends, from }) => {
      const when = from[g]
      return when ? [{ start: start.x, starts, end: end.x, ends, when: condition(when) }] : []
    })
    const sides = uses.flatMap(use => [
      2 * use.start,
      2 * use.start + 1,
      2 * use.end,
      2 * use.end + 1,
      ...(use.when ? [use.when[0]] : []),
    ])
    if (uses.length > group.ids.length) solver.watch(new Room(uses, group.ids.length), sides, true)
  })
  return orders
}

/** Forbids circles: the steps of each car come one after the other, and the orders besides. */
export function forbidCircles(
  solver: Solver,
  chains: readonly (readonly StepVariable[])[],
  orders: readonly Before[],
): void {
  const edges: Edge[] = orders.map(({ first, next, literal }) => ({
    before: first.end.x,
    after: next.start.x,
    when: literal,
  }))
  for (const chain of chains)
    chain.slice(1).forEach((step, i) => {
      edges.push({ before: chain[i]!.x, after: step.x })
    })
  const times = new Map(chains.flat().map(({ x, starts }) => [x, starts]))
  const sides = orders.map(({ literal }) => literal[0])
  solver.watch(new Order(edges, times), sides, true)
}
