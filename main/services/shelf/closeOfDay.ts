/** The close of day on one screen: what to confirm, what is there, what to order and why. */

import { checkDate, startOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { lastDayOf } from '../../domain/shelf/index.ts'
import type { Tx } from '../../store/store.ts'
import { lastCounts, stepsConfirmed } from '../../store/useRows.ts'
import type { Desk } from '../desk/desk.ts'
import { adviceView } from './adviceViews.ts'
import { type ProductAhead, type ShelfAhead, shelfAhead } from './ahead.ts'
import type { ShelfDay } from './countedProducts.ts'
import { amountsOf, bottleWords, lotViews } from './lotViews.ts'
import { lateness, orderRows } from './orders/orderViews.ts'
import { linesByProduct, ordersOf, proposedViews } from './orders/propose.ts'
import { type JobNames, jobNamesOf, jobsHit, projectionView } from './projectionViews.ts'
import { warningsOf } from './safetyWarnings.ts'
import { endOfDay, stepsToConfirm } from './stepsToConfirm.ts'

export type CloseOfDayView = Awaited<ReturnType<typeof closeOfDay>>
export type CloseProductView = ReturnType<typeof productView>

export interface ShelfWarning {
  kind: 'expired' | 'expiresSoon' | 'late' | 'runsDry' | 'storage' | 'flammable' | 'sheet'
  productIds: string[]
  orderId: string | null
  words: string
}

/**
 * The close of a day; today's unless another date is asked for, whose steps are then those finished by its end. Stock,
 * projection and orders are always those of now.
 */
export async function closeOfDay(desk: Desk, input: { date?: string | undefined } = {}) {
  const tx = desk.store.read
  const shelf = await shelfAhead(desk, tx)
  const { ground, products } = shelf
  const date = input.date ?? ground.date
  checkDate(date, 'date')
  const rows = new Map([...products].map(([id, of]) => [id, of.rows]))
  const counted = new Map([...products].map(([id, of]) => [id, of.product]))
  const untilAt = await endOfDay(tx, date, ground.nowAt)
  const proposed = ordersOf(shelf)
  const lines = linesByProduct(proposed)
  const [steps, names, counts, orders, warnings, done] = await Promise.all([
    stepsToConfirm(tx, untilAt, ground, counted, rows),
    jobNamesOf(tx, jobsHit(products.values())),
    lastCounts(tx),
    proposedViews(tx, shelf, proposed),
    otherWarnings(tx, shelf),
    doneToday(tx, ground),
  ])
  const views = [...products.values()].map(of =>
    productView(of, shelf, names, lines.get(of.product.id) ?? null, counts),
  )
  views.sort((a, b) => a.rank - b.rank || a.name.localeCompare(b.name))
  return {
    date,
    nowAt: ground.nowAt,
    zone: ground.zone,
    currency: ground.currency,
    stepsToConfirm: steps,
    products: views,
    /** What the advices come to, one order a supplier; `orders.propose` makes drafts of them. */
    orders,
    warnings: [...dryWarnings(views), ...bottleWarnings(shelf), ...warnings],
    done,
  }
}

function productView(
  of: ProductAhead,
  shelf: ShelfAhead,
  names: JobNames,
  line: Parameters<typeof adviceView>[1],
  counts: ReadonlyMap<string, number>,
) {
  const { product, rows } = of
  const { day } = shelf.ground
  const lots = lotViews(rows, product.unit, day)
  const advice = adviceView(of, line)
  const projection = projectionView(of, shelf, names)
  const { id, name, kind, unit, place, serviceClass } = product
  // Without an order every shelf runs dry some day; a booked job without its chemicals is what must not happen.
  const rank = projection.runsDry?.jobId ? 0 : advice.kind === 'order' || advice.kind === 'check' ? 1 : 2
  return {
    id,
    name,
    kind,
    unit,
    place,
    serviceClass,
    ...amountsOf(rows, day),
    lots,
    openLot: lots.find(lot => lot.state === 'open') ?? null,
    lastCountedAt: counts.get(product.id) ?? null,
    projection,
    advice,
    /** Products with a worry come first: 0 runs dry under a booked job, 1 to be ordered or counted, 2 nothing to do. */
    rank,
  }
}

function dryWarnings(products: readonly CloseProductView[]): ShelfWarning[] {
  return products.flatMap(({ id, projection }) =>
    projection.runsDry && projection.runsDry.jobId !== null
      ? [{ kind: 'runsDry' as const, productIds: [id], orderId: null, words: projection.runsDry.words }]
      : [],
  )
}

/** How soon a bottle's date is worth a word, in days. */
const soonDays = 14

function bottleWarnings({ products, ground }: ShelfAhead): ShelfWarning[] {
  const warnings: ShelfWarning[] = []
  for (const { product, rows, projection } of products.values())
    for (const row of rows) {
      const last = lastDayOf(row)
      if (last === null || last > ground.day + soonDays) continue
      const words = `${product.name} ${bottleWords(row, product.unit, ground.day)}`
      const base = { productIds: [product.id], orderId: null }
      if (last < ground.day)
        warnings.push({
          ...base,
          kind: 'expired',
          words: say('{words}: take it off the shelf and record it as thrown away.', { words }),
        })
      else if ((projection.expiring[last - ground.day] ?? 0) > 0.5)
        warnings.push({
          ...base,
          kind: 'expiresSoon',
          words: say('{words}: by then it will not be used up. Use it first.', { words }),
        })
    }
  return warnings
}

/** What the orders under way and the safety of the shelf warn of. */
async function otherWarnings(tx: Tx, { ground, products }: ShelfAhead): Promise<ShelfWarning[]> {
  const [orders, safety] = await Promise.all([
    orderRows(tx, { status: { in: ['sent', 'partly'] } }),
    warningsOf(
      tx,
      ground.nowAt,
      [...products.values()].flatMap(of => of.rows),
    ),
  ])
  const late = orders.flatMap((row): ShelfWarning[] => {
    const found = lateness(row, ground)
    if (!found) return []
    return [
      {
        kind: 'late',
        productIds: row.lines.map(line => line.productId),
        orderId: row.id,
        words: say('Order {number} from {name}: {words}.', {
          number: row.number,
          name: row.supplier.name,
          words: found.words,
        }),
      },
    ]
  })
  const { flammable } = safety
  return [
    ...late,
    ...safety.storage.map(each => ({
      kind: 'storage' as const,
      productIds: each.productIds,
      orderId: null,
      words: each.words,
    })),
    ...(flammable.state === 'over' || flammable.state === 'near'
      ? [{ kind: 'flammable' as const, productIds: [], orderId: null, words: flammable.words }]
      : []),
    ...safety.sheets.map(each => ({
      kind: 'sheet' as const,
      productIds: [each.productId],
      orderId: null,
      words: each.words,
    })),
  ]
}

async function doneToday(tx: Tx, { date, zone }: ShelfDay) {
  const since = startOfDay(date, zone)
  const [confirmed, counts, ordersSent] = await Promise.all([
    stepsConfirmed(tx, since),
    tx.auditLine.count({ where: { entity: 'stock', act: 'counted', at: { gte: since } } }),
    tx.purchaseOrder.count({ where: { sentAt: { gte: since } } }),
  ])
  return { stepsConfirmed: confirmed, counts, ordersSent }
}
