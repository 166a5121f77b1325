/** Puts the demo's chemicals on its shelf, with what its jobs have drawn and will draw. */
import { dateOf, dateOfDay, dayNumber } from '../../domain/calendar/index.ts'
import { centiOf } from '../../domain/shelf/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import { cures } from '../setUp/products.ts'
import { shopDays } from '../shelf/shopDays.ts'
import { expectedDraws } from '../shelf/stepDraws.ts'
import type { Happened } from './happen.ts'
import { demoProducts } from './productData.ts'
import { demoConsumables, demoStock, demoSuppliers } from './shelfData.ts'
import { type DemoHistory, type DemoUse, demoHistory } from './shelfHistory.ts'
import { writeOrders } from './shelfOrders.ts'
import { demoDraws, demoSheets } from './shelfRecipes.ts'
import { writeShelfSets } from './shelfSets.ts'
import { demoHours, demoShop } from './shopData.ts'
import { demoTreatments } from './treatmentData.ts'

const { zone } = demoShop

/** The demo's treatments with their recipes. */
const treatments = new Map(
  demoTreatments.map(({ id, name, steps }) => [
    id,
    { name, steps: steps.map(step => ({ ...step, draws: demoDraws(step) as unknown })) },
  ]),
)

/** Writes the shelf: what it counts, its past, and the draws of every job. The same now gives the same shelf. */
export async function writeShelf(tx: Tx, happened: readonly Happened[], nowAt: number): Promise<void> {
  await writeProducts(tx, nowAt)
  for (const { id, steps } of demoTreatments)
    for (const [position, step] of steps.entries())
      await tx.treatmentStep.updateMany({
        where: { treatmentId: id, position },
        data: { draws: demoDraws(step) as object[] },
      })
  const lines = stepLines(happened, nowAt)
  const today = dayNumber(dateOf(nowAt, zone))
  const days = shopDays({ zone, weekly: demoHours, exceptions: [] }, today - 400, today + 60)
  const uses = lines.flatMap((line): DemoUse[] =>
    line.confirmedAt === null || line.actualCenti === null
      ? []
      : [
          {
            productId: line.productId,
            day: dayNumber(dateOf(line.confirmedAt, zone)),
            at: line.confirmedAt,
            centi: line.actualCenti,
            jobId: line.jobId,
            position: line.position,
          },
        ],
  )
  const booked = new Map<string, number>()
  for (const { productId, confirmedAt, expectedCenti } of lines)
    if (confirmedAt === null) booked.set(productId, (booked.get(productId) ?? 0) + expectedCenti)
  const history = demoHistory({ stocks: demoStock, today, zone, open: days.open, uses, booked })
  throwAway(history, lines, today, nowAt)
  await writeHistory(tx, history)
  await writeShelfSets(tx, today)
  await tx.stepDraw.createMany({ data: lines })
  await writeOrders(tx, nowAt, zone)
}

/** What is laid on the car: nothing can be booked without it. */
const layers = new Set(demoProducts.filter(each => cures(each.kind)).map(each => each.id))

async function writeProducts(tx: Tx, nowAt: number): Promise<void> {
  await tx.product.createMany({ data: demoConsumables.map(({ cureProfile: _, ...product }) => product) })
  await tx.shelfProduct.createMany({
    data: demoStock.map(stock => ({
      productId: stock.productId,
      unit: stock.unit,
      densityGPerMl: stock.density,
      lifeAfterOpeningDays: stock.lifeAfterOpeningDays,
      storageLeastC: stock.unit === 'piece' ? null : 5,
      storageMostC: stock.unit === 'piece' ? null : 25,
      place: stock.place,
      serviceClass: stock.serviceClass,
      holdsUpBookings: layers.has(stock.productId),
    })),
  })
  await tx.containerSize.createMany({
    data: demoStock.map(stock => ({
      id: sizeId(stock.productId),
      productId: stock.productId,
      label: stock.label,
      labelCenti: centiOf(stock.content),
      measuredCenti: stock.measured === null ? null : centiOf(stock.measured),
      tareG: stock.tareG,
    })),
  })
  await tx.productCode.createMany({
    data: demoStock.map(({ productId, gtin }) => ({
      code: `0${gtin}`,
      productId,
      sizeId: sizeId(productId),
      learnedAt: nowAt - 200 * 1440,
      who: 'front desk',
    })),
  })
  await tx.supplier.createMany({ data: demoSuppliers })
  await tx.supplierOffer.createMany({
    data: demoStock.map(stock => ({
      id: `demo-offer-${stock.productId}`,
      supplierId: stock.supplierId,
      productId: stock.productId,
      sizeId: sizeId(stock.productId),
      article: stock.article,
      containersPerPack: stock.containersPerPack,
      breaks: [
        { fromPacks: 1, packPriceMinor: stock.packPriceMinor },
        ...(stock.breakFrom > 0
          ? [{ fromPacks: stock.breakFrom, packPriceMinor: Math.round(stock.packPriceMinor * 0.9) }]
          : []),
      ],
      shelfLifeDays: stock.shelfLifeDays,
    })),
  })
  await tx.productSafety.createMany({
    data: demoSheets.map(({ protection, ...sheet }) => ({
      ...sheet,
      ...(protection && { protection }),
      revisedOn: '2025-03-14',
      maker: 'Harrow Surface Chemistry, +1 212-555-0180',
    })),
  })
  await tx.shelfRules.create({
    data: { services: {}, lineCostMinor: 150, flammableLimitMl: 20_000 },
  })
}

export function sizeId(productId: string): string {
  return `demo-size-${productId}`
}

/** Steps finished last and not confirmed yet, where fewer were finished today. */
const leastOpen = 3

/** A line for every draw of every job: of steps finished before today with what was really used. */
function stepLines(happened: readonly Happened[], nowAt: number) {
  const lines = happened.flatMap(({ job, sold, vehicle }) => {
    const own = sold.treatments.map(each => treatments.get(each.id)!)
    const { draws } = expectedDraws(own, job.steps, vehicle.sizeClass as SizeClass)
    return draws.map(draw => ({
      ...draw,
      jobId: job.id,
      endedAt: job.steps.find(step => step.position === draw.position)!.actualEndAt,
    }))
  })
  const ended = [...new Set(lines.flatMap(line => line.endedAt ?? []))].sort((a, b) => b - a)
  const today = dateOf(nowAt, zone)
  const openFrom = Math.min(ended[leastOpen - 1] ?? nowAt, ...ended.filter(at => dateOf(at, zone) === today))
  return lines.map(({ endedAt, ...line }, i) => {
    const confirmed = endedAt !== null && endedAt < openFrom
    // Within a fifth of the recipe either way, a little more rather than less; pieces are whole.
    const drift = 0.88 + ((i * 37) % 29) / 100
    const pieces = line.productId === 'demo-cloths'
    const actual = pieces ? line.expectedCenti : Math.round((line.expectedCenti * drift) / 50) * 50
    return {
      ...line,
      confirmedAt: confirmed ? endedAt : null,
      actualCenti: confirmed ? actual : null,
      how: confirmed ? (actual === line.expectedCenti ? 'proposed' : 'corrected') : null,
    }
  })
}

/** The coating that runs dry: so many bottles went off that only part of the coming bookings is covered. */
const scarce = 'demo-ovrel-two'

function throwAway(
  history: DemoHistory,
  lines: readonly { productId: string; confirmedAt: number | null; expectedCenti: number }[],
  today: number,
  nowAt: number,
): void {
  const wanted = lines.reduce(
    (sum, line) => (line.productId === scarce && line.confirmedAt === null ? sum + line.expectedCenti : sum),
    0,
  )
  let left = history.lots.reduce((sum, lot) => (lot.productId === scarce ? sum + lot.left : sum), 0)
  // The last minute of what has been recorded, so that nothing is thrown away before it came.
  const at = Math.min(nowAt, Math.max(...history.moves.map(move => move.at)) + 1)
  for (const lot of history.lots.filter(each => each.productId === scarce && each.left > 0).reverse()) {
    if (left - lot.left < wanted * 0.4) continue
    history.moves.push({
      at,
      lotId: lot.id,
      productId: scarce,
      kind: 'waste',
      centi: -lot.left,
      why: 'crystallised: set hard in the bottle',
      discard: 'crystallised',
      jobId: null,
      position: null,
      costMinor: null,
    })
    left -= lot.left
    lot.left = 0
  }
  // One bottle of topper has stood too long.
  const old = history.lots.find(lot => lot.productId === 'demo-lindavel-top' && lot.left > 0)
  if (old) old.expiresOn = dateOfDay(today + 9)
}

async function writeHistory(tx: Tx, { lots, moves }: DemoHistory): Promise<void> {
  const life = new Map(demoStock.map(stock => [stock.productId, stock.lifeAfterOpeningDays]))
  await tx.lot.createMany({
    data: lots.map(({ left: _, ...lot }, i) => ({
      ...lot,
      number: i + 1,
      // What came together is of one batch.
      batch: `K${lot.receivedOn.replaceAll('-', '').slice(2)}`,
      sizeId: sizeId(lot.productId),
      lifeAfterOpeningDays: lot.openedOn === null ? null : (life.get(lot.productId) ?? null),
    })),
  })
  await tx.stockMove.createMany({ data: moves.map(move => ({ ...move, by: 'front desk' })) })
}
