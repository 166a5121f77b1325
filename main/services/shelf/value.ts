/** What the shelf is worth, what jobs cost in chemicals, what was thrown away, and which size is the cheapest. */

import { dateOf, dateOfDay, startOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { moneyWords } from '../../domain/money/index.ts'
import {
  type CostMethod,
  type CostState,
  comparedBy,
  compareSizes,
  leftOf,
  type PriceBreak,
  packPriceMinor,
  unitsOf,
} from '../../domain/shelf/index.ts'
import { costsOf, type JobUse, jobUses } from '../../store/costRows.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { costPoints, followCosts } from './costs.ts'
import { type Counted, countedProducts, type ShelfDay, shelfDay } from './countedProducts.ts'
import { offerRows, per100Minor } from './supplierOffers.ts'

const writeOffDays = 365
const jobDays = 90

export type ShelfValueView = Awaited<ReturnType<typeof shelfValue>>
export type ProductValueView = ReturnType<typeof productValue>

/** The value of the whole shelf today, with the write-offs of a year and the chemical cost of the latest jobs. */
export async function shelfValue(desk: Desk) {
  const tx = desk.store.read
  await followCosts(desk)
  const ground = await shelfDay(tx, desk.now())
  const [products, costed, offers] = await Promise.all([
    // Archived ones too, while they hold something: nothing of value is left out.
    allCounted(tx),
    costPoints(tx),
    offersOf(tx),
  ])
  const since = (days: number) => startOfDay(dateOfDay(ground.day - days), ground.zone)
  const views = [...products.values()].map(product =>
    productValue(product, costed.get(product.id), offers.get(product.id) ?? [], ground.currency),
  )
  const writeOffs = await writeOffViews(tx, products, since(writeOffDays))
  const sum = <T>(list: readonly T[], of: (each: T) => number) =>
    list.reduce((total, each) => total + of(each), 0)
  return {
    date: ground.date,
    currency: ground.currency,
    averageMinor: sum(views, view => view.averageMinor),
    fifoMinor: sum(views, view => view.fifoMinor),
    products: views,
    writeOffs,
    writeOffAverageMinor: sum(writeOffs, each => each.averageMinor),
    writeOffFifoMinor: sum(writeOffs, each => each.fifoMinor),
    jobs: await jobViews(tx, products, ground, { sinceAt: since(jobDays) }),
  }
}

/** What one product is worth, and what it costs in each size. */
export async function productWorth(
  desk: Desk,
  product: Counted,
  currency: string,
): Promise<ProductValueView> {
  const tx = desk.store.read
  await followCosts(desk)
  const [costed, offers] = await Promise.all([costPoints(tx, product.id), offersOf(tx, [product.id])])
  return productValue(product, costed.get(product.id), offers.get(product.id) ?? [], currency)
}

/** The chemical cost of one job, by what each product cost when it was drawn. */
export async function jobCost(desk: Desk, input: { jobId: string }) {
  const tx = desk.store.read
  await followCosts(desk)
  const [products, ground] = await Promise.all([allCounted(tx), shelfDay(tx, desk.now())])
  const [view] = await jobViews(tx, products, ground, input)
  return view ?? null
}

async function allCounted(tx: Tx): Promise<Map<string, Counted>> {
  const ids = await tx.shelfProduct.findMany({ select: { productId: true } })
  return countedProducts(
    tx,
    ids.map(each => each.productId),
  )
}

type OfferRows = Awaited<ReturnType<typeof offerRows>>

async function offersOf(tx: Tx, productIds?: readonly string[]): Promise<Map<string, OfferRows>> {
  return Map.groupBy(await offerRows(tx, productIds), row => row.productId)
}

function productValue(
  product: Counted,
  costed: Record<CostMethod, CostState> | undefined,
  offers: OfferRows,
  currency: string,
) {
  const { leftCenti, leftValueMinor: averageMinor } = leftOf(costed?.average ?? [])
  return {
    productId: product.id,
    productName: product.name,
    unit: product.unit,
    onHand: unitsOf(leftCenti),
    /** By weighted average, and by first in, first out. */
    averageMinor,
    fifoMinor: leftOf(costed?.fifo ?? []).leftValueMinor,
    /** Average cost of 100 units (100 ml); null with nothing on hand. */
    per100Minor: leftCenti === 0 ? null : per100Minor(averageMinor, leftCenti),
    sizes: sizePrices(product, offers, currency),
  }
}

/** Every size at each of its suppliers' price for one pack, the cheapest by unit first. */
function sizePrices(product: Counted, offers: OfferRows, currency: string) {
  const { words: amount, hundreds } = comparedBy(product.unit)
  const prices = offers.map(row => {
    const times = row.containersPerPack
    return {
      // A pack is compared as one container of its whole content, so that no price is rounded twice.
      size: {
        id: row.id,
        productId: row.productId,
        labelCenti: row.size.labelCenti * times,
        measuredCenti: row.size.measuredCenti === null ? null : row.size.measuredCenti * times,
        gtins: [],
      },
      priceMinor: packPriceMinor(fromJson<PriceBreak[]>(row.breaks), 1),
    }
  })
  return compareSizes(prices).flatMap(price => {
    const row = offers.find(each => each.id === price.sizeId)
    if (!row) return []
    const dearer = Math.round(price.dearerBy * 100)
    return {
      sizeLabel: row.size.label,
      supplierName: row.supplier.name,
      per100Minor: price.per100Minor,
      words: say(
        '{price} for {amount}, by what it {basis, select, measured {measures} other {says on its label}}; {dearer, plural, =0 {the cheapest} other {{dearer} % dearer than the cheapest}}',
        {
          price: moneyWords(Math.round(price.per100Minor * hundreds), currency),
          amount,
          basis: price.basis,
          dearer,
        },
      ),
    }
  })
}

async function writeOffViews(tx: Tx, products: ReadonlyMap<string, Counted>, since: number) {
  const rows = await tx.stockMove.findMany({
    where: { kind: 'waste', at: { gte: since } },
    orderBy: { seq: 'desc' },
  })
  const costs = await costsOf(
    tx,
    rows.map(row => row.seq),
  )
  const bySeq = new Map(costs.map(cost => [cost.seq, cost]))
  return rows.flatMap(row => {
    const product = products.get(row.productId)
    const cost = bySeq.get(row.seq)
    if (!product || !cost) return []
    return [
      {
        at: row.at,
        by: row.by,
        productId: product.id,
        productName: product.name,
        unit: product.unit,
        amount: unitsOf(-row.centi),
        why: row.why ?? '',
        averageMinor: -cost.averageMinor || 0,
        fifoMinor: -cost.fifoMinor || 0,
      },
    ]
  })
}

/** One job, or those that used something since a minute, the latest first. */
async function jobViews(
  tx: Tx,
  products: ReadonlyMap<string, Counted>,
  ground: ShelfDay,
  of: Parameters<typeof jobUses>[1],
) {
  const uses = Map.groupBy(await jobUses(tx, of), use => use.jobId)
  const jobs = await tx.job.findMany({
    where: { id: { in: [...uses.keys()] } },
    select: { id: true, number: true, vehicle: { select: { plate: true } } },
  })
  const sum = (lines: readonly JobUse[], what: 'averageMinor' | 'fifoMinor') =>
    lines.reduce((total, line) => total + line[what], 0)
  return jobs
    .map(({ id, number, vehicle }) => {
      const lines = uses.get(id) ?? []
      return { id, number, plate: vehicle.plate, lines, at: Math.max(...lines.map(line => line.at)) }
    })
    .sort((a, b) => b.at - a.at || b.number - a.number)
    .map(({ id, number, plate, lines, at }) => ({
      jobId: id,
      jobNumber: number,
      plate,
      date: dateOf(at, ground.zone),
      averageMinor: sum(lines, 'averageMinor'),
      fifoMinor: sum(lines, 'fifoMinor'),
      lines: lines.map(({ productId, centi, averageMinor, fifoMinor }) => ({
        productName: products.get(productId)?.name ?? '',
        unit: products.get(productId)?.unit ?? ('ml' as const),
        amount: unitsOf(centi),
        averageMinor,
        fifoMinor,
      })),
    }))
}
