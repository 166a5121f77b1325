/** What inspections say of how long a topper lasts: learned per product and exposure class, read for one car. */
import { Refusal } from '../../domain/refusal.ts'
import {
  type ChangeProposal,
  type Exposure,
  exposureClass,
  intervalWords,
  type LearnedLife,
  learnedWords,
  learnLife,
  lifeCurve,
  type ObservedLife,
  proposeInterval,
  proposeVisit,
  type ScaledInterval,
} from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { scaled } from './exposure.ts'
import type { KeptVisitPlan } from './kept.ts'
import { type ProductLifeView, priorOf, productLives } from './productLives.ts'
import type { UpkeepRules } from './settings.ts'
import type { IntervalView, LayerView, LifeView } from './views.ts'
import type { UpkeepDay } from './visits.ts'

/** How many points the picture of a curve has. */
const curvePoints = 60

export interface CarLife {
  readonly interval: IntervalView | null
  readonly life: LifeView | null
  readonly proposals: ChangeProposal[]
  readonly trouble: string | null
}

/** The life of what is on a car, with what it proposes for the plan that renews it. */
export async function carLife(
  tx: Tx,
  rules: UpkeepRules,
  day: UpkeepDay,
  car: { layers: readonly LayerView[]; exposure: Exposure; kept: readonly KeptVisitPlan[] },
): Promise<CarLife> {
  const layer = car.layers.find(each => each.stage === 'topper') ?? car.layers[0]
  const product = layer && (await productLives(tx)).get(layer.productId)
  if (!layer || !product) return { interval: null, life: null, proposals: [], trouble: null }
  const interval = scaled(product.intervalDays, car.exposure, rules)
  const shown = intervalView(product, interval)
  const prior = priorOf(product, rules.level)
  let learned: LearnedLife
  try {
    learned = learnLife(await observedLives(tx, product.productId, interval), prior, rules.level)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { interval: shown, life: null, proposals: [], trouble: error.message }
  }
  const { multiplier } = interval
  const until = Math.max(
    2 * learned.renewAge,
    layer.ageDays / multiplier,
    ...learned.readings.map(r => r.to ?? r.from),
  )
  const inDays = (age: number) => Math.round(age * multiplier)
  return {
    interval: shown,
    life: {
      productName: product.productName,
      layerId: layer.id,
      laidOn: layer.laidOn,
      ageDays: layer.ageDays,
      exposureClass: interval.exposureClass,
      level: learned.level,
      renewDays: Math.floor(learned.renewAge * multiplier),
      lowDays: Math.floor(learned.range.low * multiplier),
      highDays: learned.range.high === null ? null : Math.floor(learned.range.high * multiplier),
      confidence: learned.confidence,
      curve: lifeCurve(learned, prior, until, curvePoints).map(point => ({
        ...point,
        age: point.age * multiplier,
      })),
      readings: learned.readings.map(({ from, to, count = 1 }) => ({
        from: inDays(from),
        to: to === null ? null : inDays(to),
        count,
      })),
      lives: learned.lives,
      ended: learned.ended,
      priorWeight: learned.priorWeight,
      sentence: learnedWords(learned, multiplier),
    },
    proposals: await proposalsFor(tx, day, car.kept, learned, multiplier, layer),
    trouble: null,
  }
}

function intervalView(product: ProductLifeView, interval: ScaledInterval): IntervalView {
  return {
    productDays: product.intervalDays,
    productMark: product.mark,
    days: interval.days,
    multiplier: interval.multiplier,
    steps: [...interval.steps],
    held: interval.held,
    sentence: intervalWords(product.intervalDays, interval),
  }
}

/** Every layer of a product that was looked at on a car of this exposure class, its ages at ordinary exposure. */
async function observedLives(tx: Tx, productId: string, car: ScaledInterval): Promise<ObservedLife[]> {
  const layers = await tx.layer.findMany({
    where: { productId, inspections: { some: { voidedAt: null } } },
    include: { inspections: { where: { voidedAt: null }, orderBy: { onDay: 'asc' } } },
    orderBy: { id: 'asc' },
  })
  return layers
    .filter(({ inspections }) => exposureClass(inspections.at(-1)?.exposure ?? 1) === car.exposureClass)
    .map(({ laidOn, inspections }) => ({
      inspections: inspections.map(({ onDay, working, exposure }) => ({
        on: onDay,
        working,
        age: daysFrom(laidOn, onDay) / exposure,
      })),
    }))
}

async function proposalsFor(
  tx: Tx,
  day: UpkeepDay,
  kept: readonly KeptVisitPlan[],
  learned: LearnedLife,
  multiplier: number,
  layer: LayerView,
): Promise<ChangeProposal[]> {
  const plan = kept.find(each => each.plan.kind === 'topper' && each.plan.anchor.to === 'last-done')
  if (!plan) return []
  const looks = await tx.inspection.findMany({
    where: { layerId: layer.id, voidedAt: null },
    orderBy: [{ onDay: 'desc' }, { id: 'desc' }],
    take: 1,
  })
  const proposals = [
    // With nothing seen, the plan's interval is the rule of thumb's, and that stands until the desk says otherwise.
    learned.lives > 0 ? proposeInterval(plan, learned, multiplier, day) : null,
    looks[0]
      ? proposeVisit(
          plan,
          learned,
          multiplier,
          { laidOn: layer.laidOn, on: looks[0].onDay, working: looks[0].working },
          day,
        )
      : null,
  ]
  return proposals.filter(each => each !== null)
}

/** Days from one day to another. */
export function daysFrom(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days
}
