/** The project's own rule, as the close of day uses it: learns from the ledger, nets the bookings, joins orders. */
import {
  type Advised,
  advise,
  arrivalChances,
  type Chances,
  coverChances,
  type Demand,
  estimateLevel,
  latticeStep,
  leadTimeOf,
  learnDemand,
  lineOf,
  type Plans,
  planSupplier,
  proposeOrders,
  type Supplier,
  stockPosition,
} from '../../../main/domain/shelf/index.ts'
import type { BookedUse } from '../../../main/domain/shelf/position.ts'
import type { Rule, ShelfView } from './run.ts'
import { HOLD_RATE_PER_DAY, type SimDraw, SUPPLIERS, type World } from './shop.ts'

/** Learns anew every four weeks. */
const RELEARN_DAYS = 20
/** Deliveries remembered of each supplier. */
const LEADS_KEPT = 120
/** The furthest ahead anything is booked. */
const LONGEST_NOTICE = 20

interface Learned {
  readonly cover: Chances
  readonly arrival: Chances
}

/** What the rule expected of itself, averaged over its plans: printed beside what came of it. */
export interface Expectation {
  plans: number
  service: number[]
}

export function lustrumRule(world: World, expected?: Expectation): Rule {
  const { products } = world
  const leads = SUPPLIERS.map((_, s) => Array.from({ length: 40 }, (_, k) => world.leadOf(s, k * 7)))
  const learned: Learned[] = []
  const demands: Demand[] = []
  const plans: Plans[] = SUPPLIERS.map(() => new Map())

  const relearn = (day: number) => {
    SUPPLIERS.forEach(({ orderCost }, s) => {
      const lead = leadTimeOf(leads[s]!.slice(-LEADS_KEPT))!
      const always = () => true
      const when = { today: day, lead, supplierWorks: always, shopOpen: always }
      learned[s] = { cover: coverChances(when), arrival: arrivalChances(when) }
      const { cover } = learned[s]
      const planned = products.flatMap((product, p) => {
        if (product.supplier !== s) return []
        demands[p] = learn(world, p, day, cover)
        return [
          {
            productId: String(p),
            demand: demands[p],
            cover,
            packCenti: product.packCenti,
            breaks: product.breaks,
            holdRatePerDay: HOLD_RATE_PER_DAY,
            service: product.service,
            lifeDays: product.lifeDays,
          },
        ]
      })
      plans[s] = planSupplier(planned, orderCost, plans[s])
      for (const { productId } of planned)
        if (expected) expected.service[Number(productId)]! += plans[s].get(productId)!.best.service
    })
    if (expected) expected.plans++
  }

  const adviseOn = (view: ShelfView, p: number, day: number): Advised => {
    const product = products[p]!
    const { cover, arrival } = learned[product.supplier]!
    const demand = demands[p]!
    const shelf = {
      stock: view.lots.map(lot => ({ centi: lot.centi, openDays: lot.lastDay - day })),
      underWayCenti: view.underWayCenti,
      waitingCenti: view.waitingCenti,
      booked: bookedAhead(world, p, day),
    }
    const position = stockPosition({ ...shelf, cover, demand })
    const plan = plans[product.supplier]!.get(String(p)) ?? null
    const ages = plan?.lines?.ages
    const { coverDays } = position
    const offer = {
      supplierId: String(product.supplier),
      productId: String(p),
      sizeId: '',
      packCenti: product.packCenti,
      containersPerPack: 1,
      breaks: product.breaks,
      shelfLifeDays: product.lifeDays,
    }
    const advice = advise({
      productId: String(p),
      offer,
      plan,
      demand,
      position,
      line: ages ? lineOf({ ...shelf, coverDays, stepCenti: demand.stepCenti, ages }) : null,
      arrival,
      lifeDays: product.lifeDays,
      service: product.service,
      jobShortCenti: 0,
    })
    return { advice, offer }
  }

  return {
    delivered: (supplier, workingDays) => leads[supplier]!.push(workingDays),
    order: (day, views) => {
      if (learned.length === 0 || (day - world.historyDays) % RELEARN_DAYS === 0) relearn(day)
      const packs = products.map(() => 0)
      for (const order of proposeOrders(
        views.map((view, p) => adviseOn(view, p, day)),
        suppliers,
      ))
        for (const line of order.lines) packs[Number(line.productId)] = line.packs
      return packs
    },
  }
}

const suppliers: readonly Supplier[] = SUPPLIERS.map(({ orderCost }, s) => ({
  id: String(s),
  name: `supplier ${s}`,
  weekdays: [1, 2, 3, 4, 5],
  closedOn: [],
  cutoffMin: null,
  lead: { meanDays: 5, sdDays: 1 },
  minimumOrderMinor: 0,
  carriageMinor: orderCost.carriageMinor,
  freeCarriageFromMinor: orderCost.freeFromMinor,
}))

/** Demand from the draws of the last two years, as the ledger would show them. */
function learn(world: World, p: number, day: number, cover: Chances): Demand {
  const from = day - world.historyDays + 1
  const draws: SimDraw[] = []
  for (let d = from; d <= day; d++) draws.push(...world.draws[p]![d]!)
  const used = draws.reduce((sum, draw) => sum + draw.centi, 0)
  const ahead = (used / world.historyDays) * cover.length
  const packCenti = world.products[p]!.packCenti
  const stepCenti = latticeStep(packCenti, used / Math.max(1, draws.length), ahead)
  const weeks = new Array<number>(world.historyDays / 5).fill(0)
  for (const draw of draws) weeks[Math.floor((draw.usedOn - from) / 5)]! += draw.centi
  const levelFactor = estimateLevel(weeks).factor
  return learnDemand({ from, to: day + 1, draws }, { stepCenti, horizon: cover.length, levelFactor })
}

function bookedAhead(world: World, p: number, day: number): BookedUse[] {
  const booked: BookedUse[] = []
  for (let k = 1; k <= LONGEST_NOTICE; k++)
    for (const draw of world.draws[p]![day + k] ?? [])
      if (draw.knownOn !== null && draw.knownOn <= day) booked.push({ inDays: k, centi: draw.expectedCenti! })
  return booked
}
