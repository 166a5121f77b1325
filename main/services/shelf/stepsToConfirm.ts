/** The finished steps whose draws nobody has confirmed yet, each with what the recipe proposes. */

import { startOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { amountWords, unitsOf, usableOn, wantsLook } from '../../domain/shelf/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import { laidLots } from '../../store/laidLots.ts'
import { type LotRow, lotRows } from '../../store/lotRows.ts'
import type { Tx } from '../../store/store.ts'
import { type Counted, countedProducts, holdingOfRow, type ShelfDay, shelfDay } from './countedProducts.ts'
import type { DrawInput } from './inputs.ts'
import { lotViews } from './lotViews.ts'
import { whyNotWeighed } from './weigh.ts'

interface OpenLine {
  jobId: string
  position: number
  productId: string
  expectedCenti: number
  sdCenti: number
}

/** Lines of steps that are finished by `untilAt`, on products that are counted. */
function openLines(tx: Tx, untilAt: number): Promise<OpenLine[]> {
  return tx.$queryRaw<OpenLine[]>`
    select d.jobId, d.position, d.productId, d.expectedCenti, d.sdCenti
    from StepDraw d
      join JobStep s on s.jobId = d.jobId and s.position = d.position
      join Job j on j.id = d.jobId
      join ShelfProduct p on p.productId = d.productId
    where d.confirmedAt is null and s.actualEndAt is not null and s.actualEndAt <= ${untilAt}
      and j.status in ('inShop', 'handedOver')
    order by s.actualEndAt, d.jobId, d.position, d.productId`
}

/** How many finished steps are left to confirm. */
export async function stepsLeft(tx: Tx, untilAt: number): Promise<number> {
  const lines = await openLines(tx, untilAt)
  return new Set(lines.map(line => `${line.jobId} ${line.position}`)).size
}

/** Whether a finished step's use of this product is still to be confirmed. */
export async function isUnconfirmed(tx: Tx, productId: string, untilAt: number): Promise<boolean> {
  return (await openLines(tx, untilAt)).some(line => line.productId === productId)
}

export type StepToConfirm = Awaited<ReturnType<typeof stepsToConfirm>>[number]

/** What one finished step drew of one product, to be confirmed, corrected or weighed; `look`: why somebody has to look. */
export type DrawToConfirm = StepToConfirm['draws'][number]

/** The finished steps to confirm, in the order they were finished. `rows` are the bottles by product. */
export async function stepsToConfirm(
  tx: Tx,
  untilAt: number,
  ground: ShelfDay,
  products: ReadonlyMap<string, Counted>,
  rows: ReadonlyMap<string, readonly LotRow[]>,
) {
  const lines = await openLines(tx, untilAt)
  const jobs = await tx.job.findMany({
    where: { id: { in: [...new Set(lines.map(line => line.jobId))] } },
    include: {
      vehicle: true,
      steps: { include: { crew: { include: { crew: { select: { name: true } } } } } },
    },
  })
  const byJob = new Map(jobs.map(job => [job.id, job]))
  const groups = [...Map.groupBy(lines, line => `${line.jobId} ${line.position}`).values()]
  const looks = await looksOf(tx, groups, products, rows, ground)
  return groups.flatMap((group, i) => {
    const [first] = group
    const job = first && byJob.get(first.jobId)
    const step = job?.steps.find(each => each.position === first?.position)
    if (!job || !step || step.actualEndAt === null) return []
    const { vehicle } = job
    const draws = group.flatMap(line => {
      const product = products.get(line.productId)
      if (!product) return []
      const look = looks[i]?.get(product.id) ?? null
      return [{ ...drawToConfirm(line, product, rows.get(product.id) ?? [], ground), look }]
    })
    return {
      jobId: job.id,
      jobNumber: job.number,
      /** Of the job, as `shelf.confirmDraws` takes it. */
      version: job.version,
      position: step.position,
      plate: vehicle.plate,
      vehicleWords: [vehicle.colour, vehicle.make, vehicle.model].filter(Boolean).join(' '),
      sizeClass: vehicle.sizeClass as SizeClass,
      stepName: step.name,
      finishedAt: step.actualEndAt,
      crew: step.crew.map(each => each.crew.name),
      draws,
      /** Every draw may be confirmed unseen, as its recipe says from the bottles next in line. */
      plain: draws.every(({ look }) => look === null),
    }
  })
}

/**
 * What a step draws by its recipe, as `drawForStep` takes it. Only lines that want no look: where the bottles hold less
 * than the recipe asks, or a second batch would go onto the car, somebody has to say so, at the close of day at the latest.
 */
export async function plannedDraws(
  tx: Tx,
  nowAt: number,
  { jobId, position }: Pick<OpenLine, 'jobId' | 'position'>,
): Promise<DrawInput[]> {
  const lines = await tx.stepDraw.findMany({ where: { jobId, position, confirmedAt: null } })
  const ids = lines.map(line => line.productId)
  const [products, bottles, ground] = await Promise.all([
    countedProducts(tx, ids),
    lotRows(tx, ids),
    shelfDay(tx, nowAt),
  ])
  const rows = Map.groupBy(bottles, row => row.productId)
  const [looks] = await looksOf(tx, [lines], products, rows, ground)
  return lines.flatMap(line => {
    const product = products.get(line.productId)
    if (!product || looks?.has(product.id)) return []
    const draw = drawToConfirm(line, product, rows.get(product.id) ?? [], ground)
    return [{ productId: product.id, lotId: draw.lotId, how: 'proposed' as const, amount: draw.proposed }]
  })
}

/** What of each step wants a look, by product. */
async function looksOf(
  tx: Tx,
  groups: readonly (readonly OpenLine[])[],
  products: ReadonlyMap<string, Counted>,
  rows: ReadonlyMap<string, readonly LotRow[]>,
  { day }: ShelfDay,
) {
  const steps = await Promise.all(
    groups.map(async group => ({
      jobId: group[0]?.jobId ?? '',
      draws: await Promise.all(
        group.map(async ({ jobId, productId, expectedCenti }) => ({
          productId,
          needCenti: expectedCenti,
          laid: products.get(productId)?.kind === 'coating' ? await laidLots(tx, jobId, productId) : null,
        })),
      ),
    })),
  )
  const bottles = new Map(
    [...rows].map(([id, own]) => [id, own.map(row => ({ ...holdingOfRow(row), batch: row.batch }))]),
  )
  return wantsLook(steps, bottles, day)
}

/** What each step of a job is still to draw, in words: "22 ml of Ovrel One". */
export async function usesOf(tx: Tx, jobId: string): Promise<Map<number, string[]>> {
  const lines = await tx.stepDraw.findMany({
    where: { jobId, confirmedAt: null },
    orderBy: { productId: 'asc' },
  })
  const products = await countedProducts(
    tx,
    lines.map(line => line.productId),
  )
  const uses = new Map<number, string[]>()
  for (const { position, productId, expectedCenti } of lines) {
    const product = products.get(productId)
    if (!product) continue
    const words = say('{expectedCenti} of {name}', {
      expectedCenti: amountWords(expectedCenti, product.unit),
      name: product.name,
    })
    uses.set(position, [...(uses.get(position) ?? []), words])
  }
  return uses
}

function drawToConfirm(line: OpenLine, product: Counted, rows: readonly LotRow[], { day }: ShelfDay) {
  const lots = lotViews(rows, product.unit, day)
  const usable = rows.filter(row => usableOn(holdingOfRow(row), day))
  const onHand = usable.reduce((sum, row) => sum + row.centi, 0)
  const next = lots.find(lot => lot.next) ?? null
  const weighWords = whyNotWeighed(
    product,
    rows.find(row => row.id === next?.id),
  )
  return {
    productId: product.id,
    productName: product.name,
    unit: product.unit,
    expected: unitsOf(line.expectedCenti),
    /** One standard deviation. */
    spread: unitsOf(line.sdCenti),
    /** What to enter unless somebody knows better: the recipe, or what the bottles hold where that is less. */
    proposed: unitsOf(Math.min(line.expectedCenti, onHand)),
    tap: tapOf(line.expectedCenti, product.unit === 'piece'),
    /** The bottle next in line; null where none is on the shelf. */
    lotId: next?.id ?? null,
    lotWords:
      next?.words ??
      say('No bottle of {name} that can be used is on the shelf by the ledger.', { name: product.name }),
    lots,
    canWeigh: weighWords === null,
    weighWords,
  }
}

/** About a tenth of the draw, as a round number: two taps reach most corrections. Pieces go one by one. */
function tapOf(expectedCenti: number, pieces: boolean): number {
  if (pieces) return 1
  const tenth = unitsOf(expectedCenti) / 10
  const size = 10 ** Math.floor(Math.log10(Math.max(tenth, 0.1)))
  const lead = tenth / size
  return Number(((lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * size).toFixed(2))
}

/** The end of the shop's day, up to which its steps are looked at; never later than now. */
export async function endOfDay(tx: Tx, date: string, nowAt: number): Promise<number> {
  const { zone } = await shelfDay(tx, nowAt)
  const next = Temporal.PlainDate.from(date).add({ days: 1 }).toString()
  return Math.min(nowAt, startOfDay(next, zone) - 1)
}
