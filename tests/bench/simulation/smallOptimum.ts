/**
 * The exact optimum of the small shop by dynamic programming. For a price on every missed draw, relative value
 * iteration finds the least long-run cost a day; its value less the price of as many misses as another rule has is a
 * lower bound on the cost of every rule with that service (Lagrange), and the best such bound is attained by mixing two
 * optimal plans. Rules are measured in the same model, by their stationary distribution: no sampling anywhere.
 */
import { emptyShelf, keyOf, outcomes, positionOf, type SmallShop, type SmallState } from './smallShelf.ts'

export interface Model {
  readonly shop: SmallShop
  readonly states: readonly SmallState[]
  /** Per state and order size: where the next day leads. */
  readonly moves: readonly (readonly Move[])[]
}

// Minor units a day: a hundred-thousandth of the costs compared.
const SETTLED = 0.005

interface Move {
  readonly order: number
  readonly cost: number
  readonly missed: number
  readonly draws: number
  readonly to: Int32Array
  readonly chance: Float64Array
}

export interface Measured {
  readonly costPerDay: number
  readonly missedPerDay: number
  readonly service: number
}

/** Explores every state that any plan can reach. */
export function buildModel(shop: SmallShop): Model {
  const index = new Map<string, number>()
  const states: SmallState[] = []
  const moves: Move[][] = []
  const find = (state: SmallState) => {
    const key = keyOf(state)
    let at = index.get(key)
    if (at === undefined) {
      at = states.length
      index.set(key, at)
      states.push(state)
    }
    return at
  }
  find(emptyShelf(shop))
  for (let i = 0; i < states.length; i++) {
    const state = states[i]!
    const options: Move[] = []
    const room = Math.max(0, Math.floor((shop.most - positionOf(state)) / shop.packCells))
    for (let order = 0; order <= room; order++) {
      const merged = new Map<number, number>()
      let cost = order > 0 ? shop.orderCost : 0
      let missed = 0
      let draws = 0
      for (const way of outcomes(shop, state, order)) {
        const to = find(way.next)
        merged.set(to, (merged.get(to) ?? 0) + way.chance)
        cost += way.chance * (way.holdCost + (way.waste / shop.packCells) * shop.price)
        missed += way.chance * way.missed
        draws += way.chance * way.draws
      }
      options.push({
        order,
        cost,
        missed,
        draws,
        to: Int32Array.from(merged.keys()),
        chance: Float64Array.from(merged.values()),
      })
    }
    moves.push(options)
  }
  return { shop, states, moves }
}

/** Least cost a day when every missed draw costs `missPrice`, and the plan that reaches it. */
export function solve(model: Model, missPrice: number, start?: Float64Array) {
  const { moves } = model
  let value = start ?? new Float64Array(moves.length)
  const plan = new Int32Array(moves.length)
  for (let round = 0; round < 5000; round++) {
    const next = new Float64Array(moves.length)
    let least = Number.POSITIVE_INFINITY
    let most = Number.NEGATIVE_INFINITY
    for (let i = 0; i < moves.length; i++) {
      let best = Number.POSITIVE_INFINITY
      for (const move of moves[i]!) {
        let sum = move.cost + missPrice * move.missed
        for (let k = 0; k < move.to.length; k++) sum += move.chance[k]! * value[move.to[k]!]!
        if (sum < best - 1e-9) {
          best = sum
          plan[i] = move.order
        }
      }
      // Half a step back to the old value keeps a plan with a rhythm from swinging for ever.
      next[i] = 0.5 * best + 0.5 * value[i]!
      const change = next[i]! - value[i]!
      if (change < least) least = change
      if (change > most) most = change
    }
    const base = next[0]!
    value = next.map(v => v - base)
    if (most - least < SETTLED) return { costPerDay: least + most, plan, value }
  }
  throw new Error('value iteration did not settle')
}

/** Long-run cost and service of any rule. */
export function measure(model: Model, rule: (state: SmallState) => number): Measured {
  const { states, moves } = model
  const chosen = states.map((state, i) => moves[i]![Math.min(rule(state), moves[i]!.length - 1)]!)
  let share = new Float64Array(states.length)
  share[0] = 1
  for (let round = 0; round < 20_000; round++) {
    const next = new Float64Array(states.length)
    let change = 0
    for (let i = 0; i < states.length; i++) {
      const weight = share[i]!
      if (weight === 0) continue
      const move = chosen[i]!
      next[i]! += 0.1 * weight
      for (let k = 0; k < move.to.length; k++) next[move.to[k]!]! += 0.9 * weight * move.chance[k]!
    }
    for (let i = 0; i < states.length; i++) change += Math.abs(next[i]! - share[i]!)
    share = next
    if (change < 1e-11) break
  }
  let cost = 0
  let missed = 0
  let draws = 0
  for (let i = 0; i < states.length; i++) {
    cost += share[i]! * chosen[i]!.cost
    missed += share[i]! * chosen[i]!.missed
    draws += share[i]! * chosen[i]!.draws
  }
  return { costPerDay: cost, missedPerDay: missed, service: 1 - missed / draws }
}

/** The least cost a day of any plan that misses no more draws than `missedPerDay`. */
export function leastCostAt(model: Model, missedPerDay: number): number {
  let value: Float64Array | undefined
  const bound = (price: number) => {
    const solved = solve(model, price, value)
    value = solved.value
    return solved.costPerDay - price * missedPerDay
  }
  // The bound is concave in the price: widen until it falls, then close in by the golden section, a solve a step.
  let low = 0
  let high = model.shop.holdCostPerDay * 50
  while (bound(high * 2) > bound(high)) high *= 2
  high *= 2
  const golden = (Math.sqrt(5) - 1) / 2
  let a = { price: high - golden * (high - low), bound: bound(high - golden * (high - low)) }
  let b = { price: low + golden * (high - low), bound: bound(low + golden * (high - low)) }
  let best = Math.max(0, bound(low), a.bound, b.bound)
  for (let step = 0; step < 11; step++) {
    const rises = a.bound < b.bound
    if (rises) low = a.price
    else high = b.price
    const price = rises ? low + golden * (high - low) : high - golden * (high - low)
    const next = { price, bound: bound(price) }
    if (rises) [a, b] = [b, next]
    else [a, b] = [next, a]
    best = Math.max(best, next.bound)
  }
  return best
}
