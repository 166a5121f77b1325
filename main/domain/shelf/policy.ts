/**
 * The order point and the order quantity of one product, chosen together for least cost at the owner's service level.
 *
 * Bookings are demand known in advance. Gallego and Özer (2001) show that the best rule then nets the booked draws of
 * the days until the next delivery from the stock position, and orders by a point and a level against what is still
 * unforeseen. So the point guards against unforeseen use only, while orders follow the pace of all use.
 *
 * The search, in the order of the code: each size of order worth trying (`orderSizes`), with each level from which it
 * may join another's order; for these the least point that reaches the service (`serviceAtPoint`); for this rule its
 * cost a day, from where its position stands in the long run (`positions`), what its orders cost (`orderCosts`) and
 * what expires (`expiryWaste`). The cheapest wins.
 */
import { firstIndex } from '../calendar/index.ts'
import { type Chances, chanceOf, cumulative, mixture } from './chances.ts'
import type { LinePlan } from './expiryProgram.ts'
import { expectedWaste } from './expiryWaste.ts'
import { lowestPrice, ordersOf } from './orderCosts.ts'
import { joinLevels, packsWorthTrying, sizesToTry } from './orderSizes.ts'
import type { PolicyInput } from './policyInput.ts'
import { meanOver, standing } from './positions.ts'
import { expectedUnforeseen, leftAt, serviceAt } from './serviceAtPoint.ts'

/** One size of order with the point it needs, its service and its cost a day in minor units (not rounded). */
export interface Choice {
  /** Packs of an order at the order point. */
  readonly packs: number
  readonly orderPointCenti: number
  /** Below this the product joins an order that goes out anyway; the order point itself where joining does not pay. */
  readonly joinPointCenti: number
  readonly service: number
  readonly ownOrdersPerDay: number
  readonly joinedOrdersPerDay: number
  readonly onHandCenti: number
  readonly wastePerDayCenti: number
  readonly orderCost: number
  readonly holdCost: number
  readonly wasteCost: number
  /** What is paid over the lowest price, for staying under a price break. */
  readonly priceCost: number
  readonly costPerDay: number
}

export interface Policy {
  readonly best: Choice
  /** The cheapest choice for each size of order tried: the chart behind the decision. */
  readonly choices: readonly Choice[]
  /** `within[k]`: chance that unforeseen use until the next delivery is at most k cells. */
  readonly within: Float64Array
  readonly stepCenti: number
  readonly expectedUnforeseenCenti: number
  /** What to order by the dates of what is there; null: by the order point alone. */
  readonly lines: LinePlan | null
}

/** Chooses order point and order size. Null when the product has no use on record: then only bookings call for it. */
export function choosePolicy(input: PolicyInput): Policy | null {
  const { demand, cover, breaks, joinChance } = input
  if (demand.perDayCenti <= 0) return null
  const packCells = Math.max(1, Math.round(input.packCenti / demand.stepCenti))
  const unforeseen = mixture(demand.ahead.slice(0, cover.length), Array.from(cover))
  const question = {
    input,
    packCells,
    unforeseen,
    served: serviceAt(demand, cover),
    left: leftAt(unforeseen),
  }
  const choices = sizesToTry(packsWorthTrying(input, packCells), breaks).map(packs =>
    cheapest(joinLevels(joinChance, packs, packCells).map(joinBelow => judge(question, packs, joinBelow))),
  )
  return {
    best: cheapest(choices),
    choices,
    within: cumulative(unforeseen),
    stepCenti: demand.stepCenti,
    expectedUnforeseenCenti: expectedUnforeseen(demand, cover),
    lines: null,
  }
}

/** What is the same for every rule tried. */
interface Question {
  readonly input: PolicyInput
  readonly packCells: number
  /** Unforeseen use until the next delivery. */
  readonly unforeseen: Chances
  /** Share of draws served with the position at so many cells. */
  readonly served: (cells: number) => number
  /** Cells expected to be left of so many when the delivery comes. */
  readonly left: (cells: number) => number
}

/** The rule "at the least point that serves well enough, order `packs`; join others' orders below `joinBelow` cells". */
function judge(
  { input, packCells, unforeseen, served, left }: Question,
  packs: number,
  joinBelow: number,
): Choice {
  const { demand, joinChance, holdRatePerDay } = input
  const { stepCenti } = demand
  const longRun = standing({ day: demand.day, packCells, extraPacks: packs - 1, joinBelow, joinChance })
  const serviceWith = (point: number) => meanOver(longRun, above => served(point + above))
  const point = firstIndex(unforeseen.length, cells => serviceWith(cells) >= input.service)
  const orders = ordersOf(longRun, input)
  const wastePerOrder = expectedWaste(input, (point + longRun.topCells) * stepCenti, orders.meanCenti)
  // What expires has to be bought again: orders come the more often.
  const again = orders.meanCenti / (orders.meanCenti - wastePerOrder)
  const ownOrdersPerDay = orders.ownPerDay * again
  const joinedOrdersPerDay = orders.joinedPerDay * again
  const onHandCenti = meanOver(longRun, above => left(point + above)) * stepCenti
  const wastePerDayCenti = wastePerOrder * (ownOrdersPerDay + joinedOrdersPerDay)
  const { pricePerCenti } = orders
  const costs = {
    orderCost: orders.costPerDay * again,
    holdCost: onHandCenti * pricePerCenti * holdRatePerDay,
    wasteCost: wastePerDayCenti * pricePerCenti,
    priceCost: demand.perDayCenti * (pricePerCenti - lowestPrice(input)),
  }
  return {
    packs,
    orderPointCenti: point * stepCenti,
    joinPointCenti: (point + joinBelow) * stepCenti,
    service: serviceWith(point),
    ownOrdersPerDay,
    joinedOrdersPerDay,
    onHandCenti,
    wastePerDayCenti,
    ...costs,
    costPerDay: costs.orderCost + costs.holdCost + costs.wasteCost + costs.priceCost,
  }
}

/** The one of least cost; of equals the first, which is the smaller order. */
function cheapest(choices: readonly Choice[]): Choice {
  return choices.reduce((a, b) => (b.costPerDay < a.costPerDay - 1e-9 ? b : a))
}

/** Chance that unforeseen use until the next delivery stays within so much. */
export function chanceWithin({ within, stepCenti }: Policy, centi: number): number {
  return centi < 0 ? 0 : chanceOf(within, Math.min(Math.floor(centi / stepCenti), within.length - 1))
}
