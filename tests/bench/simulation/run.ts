/**
 * Runs one ordering rule through a world, day by day. Morning: draws, oldest stock first; one that finds too little
 * waits whole and counts as missed. Evening: deliveries come, waiting draws are served, goods past their last day are
 * thrown away, the rule orders, what stands on the shelf costs its holding.
 */
import { HOLD_RATE_PER_DAY, type SimDraw, type SimProduct, SUPPLIERS, type World } from './shop.ts'

export interface SimLot {
  centi: number
  /** Last day it can be used. */
  readonly lastDay: number
  readonly paidPerCenti: number
}

/** What a rule may know of one product at the close of a day. */
export interface ShelfView {
  readonly lots: readonly SimLot[]
  readonly underWayCenti: number
  readonly waitingCenti: number
}

export interface Rule {
  /** Packs to order of each product at the close of `day`. */
  readonly order: (day: number, views: readonly ShelfView[]) => readonly number[]
  /** Called for each delivery with the working days it took. */
  readonly delivered?: (supplier: number, workingDays: number) => void
}

export interface Result {
  readonly draws: number[]
  readonly missed: number[]
  readonly service: number[]
  readonly stockValueMinor: number[]
  readonly wasteMinor: number[]
  readonly premiumMinor: number[]
  readonly lines: number[]
  readonly orders: number
  readonly orderCostPerWeek: number
  /** Carriage, lines, holding, waste and price paid over the lowest, minor units a week. */
  readonly costPerWeek: number
}

interface Shelf {
  lots: SimLot[]
  underWay: number
  waiting: SimDraw[]
  waitingCenti: number
}

export function runShop(world: World, rule: Rule): Result {
  const { products, days } = world
  const shelves: Shelf[] = products.map(product => startingShelf(product, world.historyDays))
  const arriving: { p: number; centi: number; paidPerCenti: number; placed: number }[][] = []
  const zero = () => products.map(() => 0)
  const result = {
    draws: zero(),
    missed: zero(),
    value: zero(),
    waste: zero(),
    premium: zero(),
    lines: zero(),
  }
  let orders = 0
  let carriage = 0
  let handling = 0
  for (let day = world.historyDays; day < world.historyDays + days; day++) {
    shelves.forEach((shelf, p) => {
      for (const draw of world.draws[p]![day]!) {
        result.draws[p]!++
        if (!take(shelf, draw.centi)) {
          result.missed[p]!++
          shelf.waiting.push(draw)
          shelf.waitingCenti += draw.centi
        }
      }
    })
    for (const parcel of arriving[day] ?? []) {
      const shelf = shelves[parcel.p]!
      shelf.underWay -= parcel.centi
      const lastDay = day + products[parcel.p]!.lifeDays
      shelf.lots.push({ centi: parcel.centi, lastDay, paidPerCenti: parcel.paidPerCenti })
      rule.delivered?.(products[parcel.p]!.supplier, day - parcel.placed)
      serveWaiting(shelf)
    }
    delete arriving[day]
    shelves.forEach((shelf, p) => {
      while (shelf.lots.length > 0 && shelf.lots[0]!.lastDay <= day) {
        const lot = shelf.lots.shift()!
        result.waste[p]! += lot.centi * lot.paidPerCenti
      }
    })
    const packs = rule.order(
      day,
      shelves.map(shelf => ({
        lots: shelf.lots,
        underWayCenti: shelf.underWay,
        waitingCenti: shelf.waitingCenti,
      })),
    )
    SUPPLIERS.forEach(({ orderCost }, supplier) => {
      const lines = packs.map((count, p) => (products[p]!.supplier === supplier ? count : 0))
      if (!lines.some(count => count > 0)) return
      orders++
      const goods = lines.reduce((sum, count, p) => sum + count * priceOf(products[p]!, count), 0)
      const free = orderCost.freeFromMinor !== null && goods >= orderCost.freeFromMinor
      if (!free) carriage += orderCost.carriageMinor
      handling += lines.filter(count => count > 0).length * orderCost.lineMinor
    })
    packs.forEach((count, p) => {
      if (count === 0) return
      const product = products[p]!
      const price = priceOf(product, count)
      result.lines[p]!++
      result.premium[p]! += count * (price - product.breaks.at(-1)!.packPriceMinor)
      const centi = count * product.packCenti
      shelves[p]!.underWay += centi
      const at = day + world.leadOf(product.supplier, day)
      arriving[at] ??= []
      arriving[at].push({ p, centi, paidPerCenti: price / product.packCenti, placed: day })
    })
    shelves.forEach((shelf, p) => {
      for (const lot of shelf.lots) result.value[p]! += lot.centi * lot.paidPerCenti
    })
  }
  const sum = (list: number[]) => list.reduce((a, b) => a + b, 0)
  const cost =
    carriage + handling + sum(result.value) * HOLD_RATE_PER_DAY + sum(result.waste) + sum(result.premium)
  return {
    draws: result.draws,
    missed: result.missed,
    service: result.draws.map((count, p) => 1 - result.missed[p]! / count),
    stockValueMinor: result.value.map(value => value / days),
    wasteMinor: result.waste.map(waste => (waste / days) * 5),
    premiumMinor: result.premium.map(premium => (premium / days) * 5),
    lines: result.lines,
    orders,
    orderCostPerWeek: ((carriage + handling) / days) * 5,
    costPerWeek: (cost / days) * 5,
  }
}

/** Starts with about a month's use on the shelf, so that the first weeks are like the others. */
function startingShelf(product: SimProduct, day: number): Shelf {
  const lots = [
    {
      centi: product.packCenti * 4,
      lastDay: day + product.lifeDays,
      paidPerCenti: product.breaks[0]!.packPriceMinor / product.packCenti,
    },
  ]
  return { lots, underWay: 0, waiting: [], waitingCenti: 0 }
}

function take(shelf: Shelf, centi: number): boolean {
  let there = 0
  for (const lot of shelf.lots) there += lot.centi
  if (there < centi) return false
  let open = centi
  while (open > 0) {
    const lot = shelf.lots[0]!
    const used = Math.min(lot.centi, open)
    lot.centi -= used
    open -= used
    if (lot.centi === 0) shelf.lots.shift()
  }
  return true
}

function serveWaiting(shelf: Shelf): void {
  shelf.waiting = shelf.waiting.filter(draw => {
    if (!take(shelf, draw.centi)) return true
    shelf.waitingCenti -= draw.centi
    return false
  })
}

export function priceOf(product: SimProduct, packs: number): number {
  let price = product.breaks[0]!.packPriceMinor
  for (const entry of product.breaks) if (packs >= entry.fromPacks) price = entry.packPriceMinor
  return price
}
