/** What the shelf is worth, what jobs cost in chemicals, what was thrown away, and which size is the cheapest. */

import { dateOf, dateOfDay, startOfDay } from '../../domain/calendar/index.ts'
import {
  type Costs,
  compareSizes,
  costMoves,
  jobCosts,
  type Move,
  type MoveKind,
  type PriceBreak,
  packPriceMinor,
  unitsOf,
} from '../../domain/shelf/index.ts'
import { fromJson } from '../../store/json.ts'
import { type CostedRow, costedRows } from '../../store/moveRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type Counted, countedProducts, type ShelfDay, shelfDay } from './countedProducts.ts'
import { offerRows, per100Minor } from './supplierOffers.ts'
import { moneyWords } from './words.ts'

const writeOffDays = 365
const jobDays = 90

/** One product's ledger, costed both ways. */
interface Costed {
  readonly moves: readonly Move[]
  readonly average: Costs
  readonly fifo: Costs
}

export type ShelfValueView = Awaited<ReturnType<typeof shelfValue>>
export type ProductValueView = ReturnType<typeof productValue>

/** The value of the whole shelf today, with the write-offs of a year and the chemical cost of the latest jobs. */
export async function shelfValue(desk: Desk) {
  const tx = desk.store.read
  const ground = await shelfDay(tx, desk.now())
  const [products, ledgers, offers] = await Promise.all([
    // Archived ones too, while they hold something: nothing of value is left out.
    allCounted(tx),
    costedRows(tx),
    offersOf(tx),
  ])
  const costed = new Map([...ledgers].map(([id, rows]) => [id, costedOf(id, rows)]))
  const since = (days: number) => startOfDay(dateOfDay(ground.day - days), ground.zone)
  const views = [...products.values()].map(product =>
    productValue(product, costed.get(product.id), offers.get(product.id) ?? [], ground.currency),
  )
  const writeOffs = await writeOffViews(tx, costed, products, since(writeOffDays))
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
    jobs: await jobViews(tx, costed, products, ground, since(jobDays)),
  }
}

/** What one product is worth, and what it costs in each size. */
export async function productWorth(tx: Tx, product: Counted, currency: string): Promise<ProductValueView> {
  const [ledgers, offers] = await Promise.all([costedRows(tx, [product.id]), offersOf(tx, [product.id])])
  const rows = ledgers.get(product.id)
  return productValue(product, rows && costedOf(product.id, rows), offers.get(product.id) ?? [], currency)
}

/** The chemical cost of one job, by what each product cost when it was drawn. */
export async function jobCost(desk: Desk, input: { jobId: string }) {
  const tx = desk.store.read
  const used = await tx.stockMove.findMany({
    where: { jobId: input.jobId },
    select: { productId: true },
    distinct: ['productId'],
  })
  const ids = used.map(each => each.productId)
  const [ledgers, products, ground] = await Promise.all([
    costedRows(tx, ids),
    allCounted(tx),
    shelfDay(tx, desk.now()),
  ])
  const costed = new Map([...ledgers].map(([id, rows]) => [id, costedOf(id, rows)]))
  const views = await jobViews(tx, costed, products, ground, 0)
  return views.find(view => view.jobId === input.jobId) ?? null
}

async function allCounted(tx: Tx): Promise<Map<string, Counted>> {
  const ids = await tx.shelfProduct.findMany({ select: { productId: true } })
  return countedProducts(
    tx,
    ids.map(each => each.productId),
  )
}

function costedOf(productId: string, rows: readonly CostedRow[]): Costed {
  const moves = rows.map(
    (row): Move => ({
      id: String(row.seq),
      seq: row.seq,
      lotId: '',
      productId,
      kind: row.kind as MoveKind,
      centi: row.centi,
      at: row.at,
      by: '',
      why: null,
      stepId: null,
      jobId: row.jobId,
      costMinor: row.costMinor,
      correctsId: row.correctsSeq === null ? null : String(row.correctsSeq),
    }),
  )
  return { moves, average: costMoves(moves, 'average'), fifo: costMoves(moves, 'fifo') }
}

type OfferRows = Awaited<ReturnType<typeof offerRows>>

async function offersOf(tx: Tx, productIds?: readonly string[]): Promise<Map<string, OfferRows>> {
  return Map.groupBy(await offerRows(tx, productIds), row => row.productId)
}

function productValue(product: Counted, costed: Costed | undefined, offers: OfferRows, currency: string) {
  const averageMinor = costed?.average.leftValueMinor ?? 0
  const leftCenti = costed?.average.leftCenti ?? 0
  return {
    productId: product.id,
    productName: product.name,
    unit: product.unit,
    onHand: unitsOf(leftCenti),
    /** By weighted average, and by first in, first out. */
    averageMinor,
    fifoMinor: costed?.fifo.leftValueMinor ?? 0,
    /** Average cost of 100 units (100 ml); null with nothing on hand. */
    per100Minor: leftCenti === 0 ? null : per100Minor(averageMinor, leftCenti),
    sizes: sizePrices(product, offers, currency),
  }
}

/** Every size at each of its suppliers' price for one pack, the cheapest by unit first. */
function sizePrices(product: Counted, offers: OfferRows, currency: string) {
  const unit = product.unit === 'piece' ? 'pieces' : product.unit
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
      words:
        `${moneyWords(price.per100Minor, currency)} for 100 ${unit}, by what it ` +
        `${price.basis === 'measured' ? 'measures' : 'says on its label'}; ` +
        `${dearer === 0 ? 'the cheapest' : `${dearer} % dearer than the cheapest`}`,
    }
  })
}

async function writeOffViews(
  tx: Tx,
  costed: ReadonlyMap<string, Costed>,
  products: ReadonlyMap<string, Counted>,
  since: number,
) {
  const rows = await tx.stockMove.findMany({
    where: { kind: 'waste', at: { gte: since } },
    orderBy: { seq: 'desc' },
  })
  return rows.flatMap(row => {
    const product = products.get(row.productId)
    const costs = costed.get(row.productId)
    if (!product || !costs) return []
    const cost = (of: Costs) => -(of.byMove.get(String(row.seq)) ?? 0)
    return [
      {
        at: row.at,
        by: row.by,
        productId: product.id,
        productName: product.name,
        unit: product.unit,
        amount: unitsOf(-row.centi),
        why: row.why ?? '',
        averageMinor: cost(costs.average),
        fifoMinor: cost(costs.fifo),
      },
    ]
  })
}

async function jobViews(
  tx: Tx,
  costed: ReadonlyMap<string, Costed>,
  products: ReadonlyMap<string, Counted>,
  ground: ShelfDay,
  since: number,
) {
  const moves = [...costed.values()].flatMap(each => each.moves)
  const amounts = new Map<string, { at: number; byProduct: Map<string, number> }>()
  const served = new Map(moves.filter(move => move.kind === 'use').map(move => [move.id, move.jobId]))
  for (const move of moves) {
    const jobId = move.kind === 'use' ? move.jobId : served.get(move.correctsId ?? '')
    if (!jobId) continue
    const job = amounts.get(jobId) ?? { at: 0, byProduct: new Map<string, number>() }
    job.at = Math.max(job.at, move.at)
    job.byProduct.set(move.productId, (job.byProduct.get(move.productId) ?? 0) - move.centi)
    amounts.set(jobId, job)
  }
  const costs = (of: (each: Costed) => Costs) =>
    new Map(
      jobCosts(moves, new Map([...costed].map(([id, each]) => [id, of(each)]))).map(each => [
        each.jobId,
        each,
      ]),
    )
  const average = costs(each => each.average)
  const fifo = costs(each => each.fifo)
  const recent = [...amounts].filter(([, job]) => job.at >= since).sort((a, b) => b[1].at - a[1].at)
  const rows = await tx.job.findMany({
    where: { id: { in: recent.map(([id]) => id) } },
    select: { id: true, number: true, vehicle: { select: { plate: true } } },
  })
  const names = new Map(rows.map(row => [row.id, row]))
  return recent.flatMap(([jobId, { at, byProduct }]) => {
    const job = names.get(jobId)
    if (!job) return []
    return [
      {
        jobId,
        jobNumber: job.number,
        plate: job.vehicle.plate,
        date: dateOf(at, ground.zone),
        averageMinor: average.get(jobId)?.costMinor ?? 0,
        fifoMinor: fifo.get(jobId)?.costMinor ?? 0,
        lines: [...byProduct].map(([productId, centi]) => ({
          productName: products.get(productId)?.name ?? '',
          unit: products.get(productId)?.unit ?? ('ml' as const),
          amount: unitsOf(centi),
          averageMinor: average.get(jobId)?.byProduct.get(productId) ?? 0,
          fifoMinor: fifo.get(jobId)?.byProduct.get(productId) ?? 0,
        })),
      },
    ]
  })
}
