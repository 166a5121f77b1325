import { dateOf, dateOfDay, minuteWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { amountWords, unitsOf } from '../../domain/shelf/index.ts'
import type { Tx } from '../../store/store.ts'
import type { ProductAhead, ShelfAhead } from './ahead.ts'
import { bottleWords, nearDayWords } from './lotViews.ts'

/** The jobs a projection may name, by id. */
export type JobNames = ReadonlyMap<
  string,
  { number: number; plate: string; steps: ReadonlyMap<number, string> }
>

/** The names of the jobs that booked draws belong to. */
export async function jobNamesOf(tx: Tx, jobIds: readonly string[]): Promise<JobNames> {
  const rows = await tx.job.findMany({
    where: { id: { in: [...new Set(jobIds)] } },
    select: {
      id: true,
      number: true,
      vehicle: { select: { plate: true } },
      steps: { select: { position: true, name: true } },
    },
  })
  return new Map(
    rows.map(({ id, number, vehicle, steps }) => [
      id,
      { number, plate: vehicle.plate, steps: new Map(steps.map(step => [step.position, step.name])) },
    ]),
  )
}

/** The jobs that somebody has to be told of because a product runs dry under them. */
export function jobsHit(products: Iterable<ProductAhead>): string[] {
  return [...products].flatMap(({ projection }) => projection.dry?.jobId ?? [])
}

export type ProjectionView = ReturnType<typeof projectionView>

/**
 * The stock at the end of each day from today on, as a band (as little as one day in ten, as expected, as much as one
 * day in ten), with what is booked, expected to arrive, and to pass its date unused.
 */
export function projectionView(of: ProductAhead, shelf: ShelfAhead, jobs: JobNames) {
  const { projection, deliveries, product } = of
  const { days, ground } = shelf
  const amount = (centi = 0) => unitsOf(Math.round(centi))
  return {
    days: Array.from(projection.likely, (likely, i) => ({
      date: dateOfDay(projection.today + i),
      open: days.open(projection.today + i),
      low: amount(projection.low[i]),
      likely: amount(likely),
      high: amount(projection.high[i]),
      booked: amount(projection.booked[i]),
      arrives: amount(projection.arriving[i]),
      expires: amount(projection.expiring[i]),
    })),
    /** The day it is expected to run dry, with the job it hits. Null: not within these days. */
    runsDry: dryWords(of, shelf, jobs),
    /** The first day on which it may run dry, at the low edge of the band. */
    mayRunDry: projection.dryEarly === null ? null : dateOfDay(projection.dryEarly.day),
    deliveries: deliveries.map(({ likelyDay, lateDay, centi, orderId, orderNumber }) => ({
      date: dateOfDay(likelyDay),
      lateOn: dateOfDay(lateDay),
      amount: unitsOf(centi),
      orderId,
      orderNumber,
    })),
    expiries: expiriesOf(of, ground.day).map(({ day, centi, row }) => ({
      date: dateOfDay(day),
      amount: unitsOf(centi),
      words: bottleWords(row, product.unit, ground.day),
    })),
  }
}

/** The bottles whose date falls into the days looked at. */
function expiriesOf({ rows, holdings, projection }: ProductAhead, today: number) {
  const last = today + projection.likely.length - 1
  return holdings.flatMap(({ lotId, centi, lastDay }) => {
    const row = rows.find(each => each.id === lotId)
    return row && lastDay !== null && lastDay >= today && lastDay <= last
      ? [{ day: lastDay, centi, row }]
      : []
  })
}

/** `runs dry Thursday 09:30, under the first layer of KFR 204 (job 12): 12 ml short`. */
function dryWords(of: ProductAhead, { ground }: ShelfAhead, jobs: JobNames) {
  const { dry } = of.projection
  if (dry === null) return null
  // A draw of today that lacks something stands first among tomorrow's.
  const date = dry.at === null ? dateOfDay(dry.day) : dateOf(dry.at, ground.zone)
  const job = dry.jobId === null ? undefined : jobs.get(dry.jobId)
  const when =
    dry.at === null ? nearDayWords(date, ground.day) : minuteWords(dry.at, ground.zone, ground.nowAt)
  // Rounded up: a piece and a half short is two pieces short.
  const short = amountWords(Math.ceil(dry.missingCenti / 100) * 100, of.product.unit, 0)
  const { name } = of.product
  const hit = job && jobWords(job, dry.stepId)
  const words =
    hit === undefined
      ? say('{name} runs dry {when}, at the usual rate.', { name, when })
      : dry.at === null
        ? say('{name} runs dry {when}; the next booked job is {hit}.', { name, when, hit })
        : say('{name} runs dry {when}, under {hit}: {short} short.', { name, when, hit, short })
  return { date, jobId: dry.jobId, words }
}

function jobWords(
  job: { number: number; plate: string; steps: ReadonlyMap<number, string> },
  stepId: string | null,
) {
  const step = stepId === null ? undefined : job.steps.get(Number(stepId))
  return step
    ? say('"{step}" of {plate} (job {number})', { step, plate: job.plate, number: job.number })
    : say('{plate} (job {number})', { plate: job.plate, number: job.number })
}
