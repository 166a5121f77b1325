/** The shelf ahead: for each product what is there, booked, under way and expected, projected and advised on. */
import {
  type Advice,
  advise,
  type BookedDraw,
  useAhead as expectedUse,
  type Holding,
  lineOf,
  type Policy,
  type Projection,
  projectStock,
  stockPosition,
  takeFirstExpired,
} from '../../domain/shelf/index.ts'
import { type LotRow, lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { type ComingDraw, comingDraws } from '../../store/useRows.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import { type Counted, countedProducts, holdingOfRow, type ShelfDay, shelfDay } from './countedProducts.ts'
import { comingByProduct, withMade } from './dilutions.ts'
import { historyDays } from './histories.ts'
import { type Outlook, outlooksOf } from './outlooks.ts'
import { plansFor } from './plans.ts'
import { rulesOf } from './shelfRules.ts'
import { type ShopDays, shopDays } from './shopDays.ts'
import { type Buying, buyingsOf, suppliersInUse, type UnderWay, underWay } from './underWay.ts'

/** How far ahead the screens look, in days. */
export const daysAhead = 28

/** One product with everything known about its days ahead. */
export interface ProductAhead {
  readonly product: Counted
  readonly rows: readonly LotRow[]
  /** What the bottles hold once what is drawn before tomorrow, recorded or not, is taken off. */
  readonly holdings: readonly Holding[]
  /** What finished steps used beyond what the ledger knows of. */
  readonly waitingCenti: number
  /** What was taken off for steps begun or finished that nobody has confirmed yet. */
  readonly dueTodayCenti: number
  /** Something of it has been received: before, an empty shelf says nothing. */
  readonly everReceived: boolean
  /** It is mixed in the shop: what lacks of it is counted back to its concentrate. */
  readonly madeHere: boolean
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
  /** Only what is there and when: no order point is asked for, so none is worked out. */
  readonly unadvised?: boolean
  /** A booking that draws otherwise than it did: what it was to draw is left out. */
  readonly exceptJobId?: string | undefined
}

/** Loads, projects and advises. Reads what is needed in a handful of queries, whatever the number of products. */
export async function shelfAhead(desk: Desk, tx: Tx, input: AheadInput = {}): Promise<ShelfAhead> {
  const ahead = input.days ?? daysAhead
  const ground = await shelfDay(tx, desk.now())
  const made = await tx.dilution.findMany()
  const asked = withMade(input.productIds, made)
  const [calendar, rules, products, lots, coming, suppliers] = await Promise.all([
    calendarOf(tx),
    rulesOf(tx),
    countedProducts(tx, input.productIds),
    lotRows(tx, asked),
    comingDraws(tx, ground.nowAt, asked),
    suppliersInUse(tx, ground.zone),
  ])
  const days = shopDays(calendar, ground.day - historyDays - 1, ground.day + Math.max(ahead, 400))
  const buyings = await buyingsOf(tx, suppliers, products, rules.services)
  const deliveries = await underWay(tx, ground, suppliers, buyings)
  const outlooks = await outlooksOf(desk, tx, [...products.keys()], { ground, calendar, days, made, buyings })
  const planTerms = { ...rules, today: ground.day, days, whole: input.productIds === undefined }
  const plans = input.unadvised
    ? new Map<string, Policy | null>()
    : await plansFor(desk, tx, planTerms, [...buyings.values()], outlooks)
  const rowsOf = Map.groupBy(lots, row => row.productId)
  const others = coming.filter(draw => draw.jobId !== input.exceptJobId)
  const comingOf = comingByProduct(others, rowsOf, made, at => Math.max(ground.day, days.dayOf(at)))
  const found = new Map<string, ProductAhead>()
  for (const [id, product] of products) {
    const outlook = outlooks.get(id)
    if (!outlook) continue
    const start = { product, rows: rowsOf.get(id) ?? [], coming: comingOf.get(id) ?? [] }
    const flows = { deliveries: deliveries.get(id) ?? [], buying: buyings.get(id) ?? null }
    const plan = plans.get(id) ?? null
    const madeHere = made.some(each => each.productId === id)
    found.set(id, productAhead({ ...start, ...flows, madeHere, outlook, plan, ground, days, ahead }))
  }
  return { ground, days, products: found }
}

interface Loaded {
  product: Counted
  rows: readonly LotRow[]
  coming: readonly ComingDraw[]
  deliveries: readonly UnderWay[]
  buying: Buying | null
  madeHere: boolean
  outlook: Outlook
  plan: Policy | null
  ground: ShelfDay
  days: ShopDays
  ahead: number
}

function productAhead(loaded: Loaded): ProductAhead {
  const { product, rows, coming, deliveries, buying, madeHere, outlook, plan, ground, days } = loaded
  const flows = flowsOf(rows.map(holdingOfRow), coming, ground, days)
  const { holdings, booked } = flows
  const projection = projectStock({
    today: ground.day,
    days: loaded.ahead,
    holdings,
    booked,
    deliveries,
    unforeseen: expectedUse(outlook.demand, loaded.ahead),
    shopOpen: days.open,
  })
  const { everReceived } = outlook
  const base = {
    product,
    rows,
    ...flows,
    everReceived,
    madeHere,
    deliveries,
    buying,
    outlook,
    projection,
    plan,
  }
  return { ...base, advice: adviceOf(base, ground, days) }
}

/**
 * What is drawn before tomorrow is taken off the bottles in the usual order, whether recorded or not: finished steps
 * first, then those that should have begun. What a finished step lacks was used all the same, so the ledger is wrong;
 * what another lacks is still wanted, and stands first among the draws to come.
 */
function flowsOf(all: readonly Holding[], coming: readonly ComingDraw[], ground: ShelfDay, days: ShopDays) {
  let holdings = all
  let waitingCenti = 0
  let dueTodayCenti = 0
  const booked: BookedDraw[] = []
  const due = (draw: ComingDraw) => draw.finished || days.dayOf(draw.at) <= ground.day
  for (const draw of [...coming].sort((a, b) => Number(b.finished) - Number(a.finished))) {
    const { jobId, position, at, centi, sdCenti } = draw
    const line = { jobId, stepId: String(position), at, sdCenti }
    if (!due(draw)) {
      booked.push({ ...line, day: days.dayOf(at), centi })
      continue
    }
    const { use, shortCenti } = takeFirstExpired(holdings, centi, ground.day)
    dueTodayCenti += centi - shortCenti
    const taken = new Map(use.map(each => [each.lotId, each.centi]))
    holdings = holdings
      .map(each => ({ ...each, centi: each.centi - (taken.get(each.lotId) ?? 0) }))
      .filter(each => each.centi > 0)
    if (shortCenti === 0) continue
    if (draw.finished) waitingCenti += shortCenti
    else booked.push({ ...line, day: ground.day + 1, centi: shortCenti })
  }
  return { holdings, waitingCenti, dueTodayCenti, booked }
}

function adviceOf(base: Omit<ProductAhead, 'advice'>, ground: ShelfDay, days: ShopDays): Advice | null {
  const { buying, outlook, holdings, booked, deliveries, plan } = base
  if (!buying) return null
  const openAhead = (day: number) => days.openBefore(day + 1) - days.openBefore(ground.day + 1)
  const shelf = {
    stock: holdings
      .filter(each => each.lastDay === null || each.lastDay > ground.day)
      .map(each => ({ centi: each.centi, openDays: each.lastDay === null ? null : openAhead(each.lastDay) })),
    underWayCenti: deliveries.reduce((sum, each) => sum + each.centi, 0),
    waitingCenti: base.waitingCenti,
    booked: booked.map(each => ({ inDays: Math.max(1, openAhead(each.day)), centi: each.centi })),
  }
  const { demand, cover } = outlook
  const position = stockPosition({ ...shelf, cover, demand })
  const { coverDays } = position
  const ages = plan?.lines?.ages
  return advise({
    productId: base.product.id,
    offer: buying.offer,
    plan,
    demand,
    position,
    line: ages ? lineOf({ ...shelf, coverDays, stepCenti: demand.stepCenti, ages }) : null,
    arrival: outlook.arrival,
    // Without any use on record nothing says how much would be used before it expires.
    lifeDays: outlook.demand.draws === 0 ? null : outlook.lifeDays,
    service: buying.service,
    // What is under way already is counted in the position: a second order would come no sooner.
    jobShortCenti:
      deliveries.length > 0 ? 0 : jobShort(base.projection, ground.day, position.coverDays, openAhead),
  })
}

/** What the first booked job to go short lacks, if only an order of today could still serve it. */
function jobShort(
  { dry }: Projection,
  today: number,
  coverDays: number,
  openAhead: (day: number) => number,
): number {
  if (dry?.jobId == null || dry.day <= today) return 0
  return openAhead(dry.day) <= coverDays + 1 ? dry.missingCenti : 0
}
