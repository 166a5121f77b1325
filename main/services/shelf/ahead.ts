/** The shelf ahead: for each product what is there, booked, under way and expected, projected and advised on. */
import { startOfDay } from '../../domain/calendar/index.ts'
import {
  type Advice,
  advise,
  type BookedDraw,
  dateOfDay,
  useAhead as expectedUse,
  type Holding,
  type Policy,
  type Projection,
  projectStock,
  stockPosition,
  takeFirstExpired,
} from '../../domain/shelf/index.ts'
import { type LotRow, lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { type ComingDraw, comingDraws } from '../../store/useRows.ts'
import type { Desk } from '../desk.ts'
import { calendarOf } from '../shopView.ts'
import { histories, historyDays } from './histories.ts'
import { type Buying, type Covers, coversOf, type Outlook, outlookOf, plansFor } from './plans.ts'
import { type Counted, countedProducts, holdingOfRow, type ShelfDay, shelfDay } from './shelfGround.ts'
import { rulesOf } from './shelfRules.ts'
import { type ShopDays, shopDays } from './shopDays.ts'
import { buyingsOf, suppliersInUse, type UnderWay, underWay } from './underWay.ts'

/** How far ahead the screens look, in days. */
export const daysAhead = 28

/** One product with everything known about its days ahead. */
export interface ProductAhead {
  readonly product: Counted
  readonly rows: readonly LotRow[]
  /** What the bottles hold once the draws that are due and not recorded yet are taken off. */
  readonly holdings: readonly Holding[]
  /** Of those draws, what the bottles could not give. */
  readonly waitingCenti: number
  readonly booked: readonly BookedDraw[]
  readonly deliveries: readonly UnderWay[]
  readonly buying: Buying | null
  readonly outlook: Outlook
  readonly projection: Projection
  readonly plan: Policy | null
  /** Null where nobody sells it. */
  readonly advice: Advice | null
}

export interface ShelfAhead {
  readonly ground: ShelfDay
  readonly days: ShopDays
  readonly products: ReadonlyMap<string, ProductAhead>
}

export interface AheadInput {
  /** Some products; all where left out. */
  readonly productIds?: readonly string[]
  readonly days?: number
}

/** Loads, projects and advises. Reads what is needed in a handful of queries, whatever the number of products. */
export async function shelfAhead(desk: Desk, tx: Tx, input: AheadInput = {}): Promise<ShelfAhead> {
  const ahead = input.days ?? daysAhead
  const ground = await shelfDay(tx, desk.now())
  const [calendar, rules, products, lots, coming, suppliers] = await Promise.all([
    calendarOf(tx),
    rulesOf(tx),
    countedProducts(tx, input.productIds),
    lotRows(tx, input.productIds),
    comingDraws(tx, ground.nowAt, input.productIds),
    suppliersInUse(tx, ground.zone),
  ])
  const days = shopDays(calendar, ground.day - historyDays - 1, ground.day + Math.max(ahead, 400))
  const fromAt = startOfDay(dateOfDay(ground.day - historyDays), ground.zone)
  const pastOf = await histories(tx, days, ground.day, fromAt, input.productIds)
  const buyings = await buyingsOf(tx, suppliers, products, rules.services)
  const deliveries = await underWay(tx, ground, suppliers, buyings)
  const covers = new Map<string | null, Covers>()
  const outlooks = new Map<string, Outlook>()
  for (const id of products.keys()) {
    const buying = buyings.get(id) ?? null
    const key = buying?.supplier.id ?? null
    const own = covers.get(key) ?? coversOf(buying, ground.day, days)
    covers.set(key, own)
    outlooks.set(id, outlookOf(pastOf(id), buying, own, days))
  }
  const planGround = { ...rules, today: ground.day, days, whole: input.productIds === undefined }
  const plans = await plansFor(desk, tx, planGround, [...buyings.values()], outlooks)
  const rowsOf = Map.groupBy(lots, row => row.productId)
  const comingOf = Map.groupBy(coming, draw => draw.productId)
  const found = new Map<string, ProductAhead>()
  for (const [id, product] of products) {
    const start = { product, rows: rowsOf.get(id) ?? [], coming: comingOf.get(id) ?? [] }
    const flows = { deliveries: deliveries.get(id) ?? [], buying: buyings.get(id) ?? null }
    const outlook = outlooks.get(id)!
    found.set(
      id,
      productAhead({ ...start, ...flows, outlook, plan: plans.get(id) ?? null, ground, days, ahead }),
    )
  }
  return { ground, days, products: found }
}

interface Loaded {
  product: Counted
  rows: readonly LotRow[]
  coming: readonly ComingDraw[]
  deliveries: readonly UnderWay[]
  buying: Buying | null
  outlook: Outlook
  plan: Policy | null
  ground: ShelfDay
  days: ShopDays
  ahead: number
}

function productAhead(loaded: Loaded): ProductAhead {
  const { product, rows, coming, deliveries, buying, outlook, plan, ground, days } = loaded
  const placed = coming.map(draw => ({ draw, day: draw.finished ? ground.day : days.dayOf(draw.at) }))
  const due = placed.filter(({ day }) => day <= ground.day)
  const dueCenti = due.reduce((sum, { draw }) => sum + draw.centi, 0)
  const { holdings, waitingCenti } = lessDue(rows.map(holdingOfRow), dueCenti, ground.day)
  const booked = placed.flatMap(({ draw, day }): BookedDraw[] =>
    day > ground.day
      ? [
          {
            jobId: draw.jobId,
            stepId: String(draw.position),
            day,
            at: draw.at,
            centi: draw.centi,
            sdCenti: draw.sdCenti,
          },
        ]
      : [],
  )
  const projection = projectStock({
    today: ground.day,
    days: loaded.ahead,
    holdings,
    booked,
    deliveries,
    unforeseen: expectedUse(outlook.demand, loaded.ahead),
    shopOpen: days.open,
  })
  const base = {
    product,
    rows,
    holdings,
    waitingCenti,
    booked,
    deliveries,
    buying,
    outlook,
    projection,
    plan,
  }
  return { ...base, advice: adviceOf(base, ground, days) }
}

/** The bottles once what is due has been taken off them in the usual order. */
function lessDue(holdings: readonly Holding[], dueCenti: number, day: number) {
  if (dueCenti <= 0) return { holdings, waitingCenti: 0 }
  const { use, shortCenti } = takeFirstExpired(holdings, dueCenti, day)
  const taken = new Map(use.map(each => [each.lotId, each.centi]))
  const left = holdings.map(each => ({ ...each, centi: each.centi - (taken.get(each.lotId) ?? 0) }))
  return { holdings: left.filter(each => each.centi > 0), waitingCenti: shortCenti }
}

function adviceOf(base: Omit<ProductAhead, 'advice'>, ground: ShelfDay, days: ShopDays): Advice | null {
  const { buying, outlook, holdings, booked, deliveries, plan } = base
  if (!buying) return null
  const openAhead = (day: number) => days.openBefore(day + 1) - days.openBefore(ground.day + 1)
  const position = stockPosition({
    stock: holdings
      .filter(each => each.lastDay === null || each.lastDay > ground.day)
      .map(each => ({ centi: each.centi, openDays: each.lastDay === null ? null : openAhead(each.lastDay) })),
    underWayCenti: deliveries.reduce((sum, each) => sum + each.centi, 0),
    waitingCenti: base.waitingCenti,
    booked: booked.map(each => ({ inDays: Math.max(1, openAhead(each.day)), centi: each.centi })),
    cover: outlook.cover,
    demand: outlook.demand,
  })
  return advise({
    productId: base.product.id,
    offer: buying.offer,
    plan,
    demand: outlook.demand,
    position,
    arrival: outlook.arrival,
    // Without any use on record nothing says how much would be used before it expires.
    lifeDays: outlook.demand.draws === 0 ? null : outlook.lifeDays,
    service: buying.service,
  })
}
