/**
 * The order point and the order quantity of one product, chosen together for least cost at the owner's service level.
 *
 * Bookings are demand known in advance. Gallego and Özer (2001) show that the best rule then nets the booked draws of
 * the days until the next delivery from the stock position, and orders by a point and a level against what is still
 * unforeseen. So the point guards against unforeseen use only, while orders follow the pace of all use. For each size
 * of order that whole packs allow, the least point that reaches the service level is found, the cost a day follows
 * exactly from `positions`, and the cheapest pair wins.
 */
import { addIndependent, type Chances, cumulative, mixture } from './chances.ts'
import type { Demand } from './demand.ts'
import { normalLoss } from './normal.ts'
import { type Standing, standing } from './positions.ts'
import type { PriceBreak } from './supplier.ts'
import { economicQuantity } from './textbook.ts'

/** What one order costs beside the goods. */
export interface OrderCost {
  readonly carriageMinor: number
  /** Value of goods from which the carriage is free; null: never. */
  readonly freeFromMinor: number | null
  /** Handling of one line: checking, booking in, putting away. */
  readonly lineMinor: number
}

export interface PolicyInput {
  readonly demand: Demand
  /** `cover[k]`: chance that what is ordered at the next chance serves draws only after the k-th open day from now. */
  readonly cover: Chances
  readonly packCenti: number
  readonly breaks: readonly PriceBreak[]
  readonly orderCost: OrderCost
  /** Chance a day that another product orders from the same supplier, so that this one may join. */
  readonly joinChance: number
  /** What holding goods costs a day, as a share of their price. */
  readonly holdRatePerDay: number
  /** Share of draws that find the whole amount on the shelf, 0..1. */
  readonly service: number
  /** Open days from delivery to expiry; null when the goods keep. */
  readonly lifeDays: number | null
}

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
}

// No shop wants more than this of a product on its shelf; it bounds the search.
const MOST_CELLS = 480
const JOIN_PARTS = [1 / 3, 2 / 3, 1]

/** Chooses order point and order size. Null when the product has no use on record: then only bookings call for it. */
export function choosePolicy(input: PolicyInput): Policy | null {
  const { demand, packCenti } = input
  if (demand.perDayCenti <= 0) return null
  const packCells = Math.max(1, Math.round(packCenti / demand.stepCenti))
  const most = Math.max(1, Math.min(Math.floor(MOST_CELLS / packCells), packsWorthTrying(input)))
  const unforeseen = mixture(demand.ahead.slice(0, input.cover.length), Array.from(input.cover))
  const judge = { served: servedAt(input), left: expectedLeft(unforeseen), cells: unforeseen.length }
  const choices = sizesToTry(most, input.breaks).map(packs =>
    cheapest(
      joinLevels(input, packs, packCells).map(level => evaluate(input, packs, packCells, level, judge)),
    ),
  )
  return {
    best: cheapest(choices),
    choices,
    within: cumulative(unforeseen),
    stepCenti: demand.stepCenti,
    expectedUnforeseenCenti: expectedUnforeseen(demand, input.cover),
  }
}

/** What is expected to be used unbooked until the next delivery, in centi. */
export function expectedUnforeseen(demand: Demand, cover: Chances): number {
  return cover.reduce((sum, chance, k) => sum + chance * (demand.aheadMeanCenti[k] ?? 0), 0)
}

interface Judge {
  readonly served: (cells: number) => number
  readonly left: (cells: number) => number
  readonly cells: number
}

function evaluate(
  input: PolicyInput,
  packs: number,
  packCells: number,
  joinBelow: number,
  judge: Judge,
): Choice {
  const { demand } = input
  const step = demand.stepCenti
  const place = standing({
    day: demand.day,
    packCells,
    extraPacks: packs - 1,
    joinBelow,
    joinChance: input.joinChance,
  })
  const point = leastPoint(place, judge, input.service)
  const onHandCenti = longRun(place, d => judge.left(point + d)) * step
  const orders = billed(place, input)
  const waste = Math.min(
    orders.meanCenti * 0.9,
    expectedWaste(input, (point + place.topCells) * step, orders.meanCenti),
  )
  // What expires has to be bought again: orders come the more often.
  const grown = orders.meanCenti / (orders.meanCenti - waste)
  const ownOrdersPerDay = orders.ownPerDay * grown
  const joinedOrdersPerDay = orders.joinedPerDay * grown
  const wastePerDayCenti = waste * (ownOrdersPerDay + joinedOrdersPerDay)
  const { pricePerCenti } = orders
  const orderCost = orders.costPerDay * grown
  const holdCost = onHandCenti * pricePerCenti * input.holdRatePerDay
  const wasteCost = wastePerDayCenti * pricePerCenti
  const priceCost = demand.perDayCenti * (pricePerCenti - lowestPrice(input))
  return {
    packs,
    orderPointCenti: point * step,
    joinPointCenti: (point + joinBelow) * step,
    service: longRun(place, d => judge.served(point + d)),
    ownOrdersPerDay,
    joinedOrdersPerDay,
    onHandCenti,
    wastePerDayCenti,
    orderCost,
    holdCost,
    wasteCost,
    priceCost,
    costPerDay: orderCost + holdCost + wasteCost + priceCost,
  }
}

function longRun(place: Standing, worth: (d: number) => number): number {
  return place.share.reduce((sum, share, d) => sum + share * worth(d), 0)
}

/** The least order point (cells, 0 or more) at which the long-run share of draws served reaches the target. */
function leastPoint(place: Standing, judge: Judge, target: number): number {
  let low = 0
  let high = judge.cells
  while (low < high) {
    const middle = (low + high) >> 1
    if (longRun(place, d => judge.served(middle + d)) >= target) high = middle
    else low = middle + 1
  }
  return low
}

function cheapest(choices: readonly Choice[]): Choice {
  return choices.reduce((a, b) => (b.costPerDay < a.costPerDay - 1e-9 ? b : a))
}

/** Every size up to 6 packs, then coarser steps, and every price break: the cost is flat around its least. */
function sizesToTry(most: number, breaks: readonly PriceBreak[]): number[] {
  const sizes = new Set(breaks.map(entry => entry.fromPacks).filter(packs => packs <= most))
  for (let packs = 1; packs <= most; packs = Math.max(packs + 1, Math.floor(packs * 1.3))) sizes.add(packs)
  return [...sizes].sort((a, b) => a - b)
}

function joinLevels(input: PolicyInput, packs: number, packCells: number): number[] {
  if (input.joinChance === 0 || packs === 1) return [0]
  return [0, ...JOIN_PARTS.map(part => Math.round(part * (packs - 1) * packCells))]
}

/**
 * The share of draws of the last day before the next delivery that find their whole amount, when the position stands at
 * so many cells now: booked ones compete with all unforeseen use until that day's end, an unforeseen one with the use
 * before that day and its own size. Each is taken to come last within the day, which errs on the safe side.
 */
function servedAt(input: PolicyInput): (cells: number) => number {
  const { demand, cover } = input
  const parts: Chances[] = []
  const weights: number[] = []
  cover.forEach((chance, k) => {
    if (chance === 0) return
    const open = demand.unforeseenShare[k]!
    parts.push(demand.ahead[k]!)
    weights.push(chance * (1 - open))
    parts.push(addIndependent(demand.ahead[Math.max(0, k - 1)]!, demand.drawSize[k]!, demand.cap))
    weights.push(chance * open)
  })
  const within = cumulative(mixture(parts, weights))
  return cells => (cells < 0 ? 0 : within[Math.min(cells, within.length - 1)]!)
}

/** Expected cells left of `y` after the unforeseen use, for any `y`. */
function expectedLeft(unforeseen: Chances): (cells: number) => number {
  const left = new Float64Array(unforeseen.length)
  let sum = 0
  for (let y = 1; y < left.length; y++) {
    sum += unforeseen[y - 1]!
    left[y] = left[y - 1]! + sum
  }
  const last = left.length - 1
  return cells => (cells <= 0 ? 0 : cells <= last ? left[cells]! : left[last]! + (cells - last))
}

/**
 * Expected part of one order that outlives its date: what is left of the position `topCenti` after the use of the
 * order's life, but no more than the order itself, for what stood before it expires before it.
 */
function expectedWaste(input: PolicyInput, topCenti: number, orderCenti: number): number {
  if (input.lifeDays === null) return 0
  const { demand } = input
  const soon = expectedUnforeseen(demand, input.cover)
  const mean = soon + demand.perDayCenti * Math.max(0, input.lifeDays - 1)
  const sd = Math.sqrt(demand.perDayVariance * Math.max(1, input.lifeDays))
  const leftOf = (centi: number) =>
    sd === 0 ? Math.max(0, centi - mean) : sd * normalLoss((mean - centi) / sd)
  return leftOf(topCenti) - leftOf(topCenti - orderCenti)
}

/** What the long run's orders cost, each by its own size. */
function billed(place: Standing, input: PolicyInput) {
  const { packCenti, breaks, orderCost } = input
  let ownPerDay = 0
  let joinedPerDay = 0
  let packs = 0
  let paid = 0
  let costPerDay = 0
  for (let n = 1; n < place.ownOrders.length; n++) {
    const own = place.ownOrders[n]!
    const joined = place.joinedOrders[n] ?? 0
    const goods = n * packPriceMinor(breaks, n)
    const free = orderCost.freeFromMinor !== null && goods >= orderCost.freeFromMinor
    ownPerDay += own
    joinedPerDay += joined
    packs += (own + joined) * n
    paid += (own + joined) * goods
    costPerDay += own * (free ? 0 : orderCost.carriageMinor) + (own + joined) * orderCost.lineMinor
  }
  const meanCenti = (packs * packCenti) / (ownPerDay + joinedPerDay)
  return { ownPerDay, joinedPerDay, meanCenti, pricePerCenti: paid / packs / packCenti, costPerDay }
}

/** Price of one pack in an order of so many. */
export function packPriceMinor(breaks: readonly PriceBreak[], packs: number): number {
  let price = breaks[0]!.packPriceMinor
  for (const entry of breaks) if (packs >= entry.fromPacks) price = entry.packPriceMinor
  return price
}

function lowestPrice(input: PolicyInput): number {
  return Math.min(...input.breaks.map(entry => entry.packPriceMinor)) / input.packCenti
}

/**
 * Packs beyond which a larger order cannot pay: what will be used before it expires, and three times the classical
 * economic quantity, the highest price break or free carriage, whichever is more.
 */
function packsWorthTrying(input: PolicyInput): number {
  const { demand, packCenti, breaks, orderCost } = input
  const packPrice = breaks[0]!.packPriceMinor
  const cost = orderCost.carriageMinor + orderCost.lineMinor
  const economic =
    cost === 0
      ? 1
      : economicQuantity(demand.perDayCenti / packCenti, cost, packPrice * input.holdRatePerDay).quantity
  const highest = Math.max(...breaks.map(entry => entry.fromPacks))
  const free = orderCost.freeFromMinor === null ? 0 : Math.ceil(orderCost.freeFromMinor / packPrice)
  const worth = Math.max(highest, Math.ceil(3 * economic), Math.min(free, Math.ceil(8 * economic)))
  if (input.lifeDays === null) return worth
  return Math.min(worth, Math.max(1, Math.floor((demand.perDayCenti * input.lifeDays) / packCenti)))
}
