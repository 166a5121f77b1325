/**
 * Where the stock position stands in the long run under the rule: when it falls below the order point, order whole
 * packs; when an order goes to the supplier anyway and the position is low enough, join it. Each product is looked at by
 * itself, with a chance a day that another one's order comes by (Federgruen, Groenevelt and Tijms 1984, "can-order"
 * rules). Without joining it is the (s, S) rule in steps of a pack; with orders of one pack its position is uniform
 * (Hadley and Whitin 1963), which the tests use.
 *
 * The position is counted in lattice cells above the lowest level that needs no order.
 */
import { addTo, type Chances, chanceOf } from './chances.ts'

export interface OrderRule {
  /** One day's demand. */
  readonly day: Chances
  readonly packCells: number
  /** Packs ordered beyond those that bring the position back to the order point. */
  readonly extraPacks: number
  /** The position joins another's order when it is below this many cells; at most `extraPacks * packCells`. */
  readonly joinBelow: number
  /** Chance a day that another product orders from the same supplier. */
  readonly joinChance: number
}

export interface Standing {
  /** `share[d]`: part of the days that end, after ordering, `d` cells above the lowest level. */
  readonly share: Float64Array
  /** Mean cells above it just after an order. */
  readonly topCells: number
  /** `ownOrders[n]`: orders a day of n packs that the point calls for. */
  readonly ownOrders: Float64Array
  /** `joinedOrders[n]`: the same for those that join another product's order. */
  readonly joinedOrders: Float64Array
}

const ROUNDS = 40

/** The long run of the rule: passes from order to order until the starting places repeat. */
export function standing(rule: OrderRule): Standing {
  const span = (rule.extraPacks + 1) * rule.packCells
  let starts: Float64Array = new Float64Array(rule.packCells).fill(1 / rule.packCells)
  let pass = onePass(rule, span, starts)
  for (let round = 0; round < ROUNDS; round++) {
    const change = starts.reduce((sum, chance, miss) => sum + Math.abs(chance - chanceOf(pass.next, miss)), 0)
    if (change < 1e-4) break
    starts = pass.next
    pass = onePass(rule, span, starts)
  }
  const days = pass.visits.reduce((sum, visit) => sum + visit, 0)
  const topCells = starts.reduce((sum, chance, miss) => sum + chance * (span - 1 - miss), 0)
  return {
    share: pass.visits.map(visit => visit / days),
    topCells,
    ownOrders: pass.own.map(chance => chance / days),
    joinedOrders: pass.joined.map(chance => chance / days),
  }
}

/** The mean of what something is worth over the long run, by the cells above the lowest level. */
export function meanOver({ share }: Standing, worth: (cellsAbove: number) => number): number {
  return share.reduce((sum, part, cellsAbove) => sum + part * worth(cellsAbove), 0)
}

/**
 * From one order to the next. `starts[miss]` is the chance to begin `miss` cells below the highest level. A day's demand
 * is seen first; then, at its close, the position has fallen below the point (an order of its own), may join, or stays.
 */
function onePass(rule: OrderRule, span: number, starts: Float64Array) {
  const { day, packCells, joinBelow, joinChance } = rule
  const arrived = new Float64Array(span)
  for (let miss = 0; miss < starts.length; miss++) addTo(arrived, span - 1 - miss, chanceOf(starts, miss))
  const visits = new Float64Array(span)
  const next = new Float64Array(packCells)
  const own = new Float64Array(Math.floor((span + day.length) / packCells) + 1)
  const joined = new Float64Array(rule.extraPacks + 1)
  for (let d = span - 1; d >= 0; d--) {
    const chance = chanceOf(arrived, d)
    if (chance === 0) continue
    // A day without demand is followed by another look at the same place, at which an order may be joined.
    const stay = d < joinBelow ? 1 - joinChance : 1
    const days = chance / (1 - chanceOf(day, 0) * stay)
    visits[d] = days
    if (stay < 1) join(d, days * chanceOf(day, 0) * joinChance)
    for (let use = 1; use < day.length; use++) {
      const moved = days * chanceOf(day, use)
      const to = d - use
      if (to < 0) {
        const under = -to - 1
        addTo(own, Math.floor((span + under) / packCells), moved)
        addTo(next, under % packCells, moved)
      } else if (to < joinBelow) {
        join(to, moved * joinChance)
        addTo(arrived, to, moved * (1 - joinChance))
      } else addTo(arrived, to, moved)
    }
  }
  return { visits, next, own, joined }

  function join(d: number, chance: number): void {
    const packs = Math.floor((span - 1 - d) / packCells)
    addTo(joined, packs, chance)
    addTo(next, span - 1 - d - packs * packCells, chance)
  }
}
