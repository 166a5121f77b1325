/** What inspections say of how long a topper lasts: learned per product and exposure class, read for one car. */
import { Refusal } from '../../domain/refusal.ts'
import {
  type ChangeProposal,
  type Exposure,
  exposureClass,
  intervalWords,
  type LearnedLife,
  type LifePrior,
  learnedWords,
  learnLife,
  lifeCurve,
  missingWords,
  type ObservedLife,
  pooled,
  proposeInterval,
  proposeVisit,
  type ScaledInterval,
} from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { scaled } from './exposure.ts'
import type { KeptVisitPlan } from './kept.ts'
import { daysFrom, type LayerView } from './layers.ts'
import { type ProductLifeView, priorOf, productLives } from './productLives.ts'
import type { UpkeepRules } from './settings.ts'
import type { UpkeepDay } from './visits.ts'

/** How many points the picture of a curve has. */
const curvePoints = 60

export interface CarLife {
  readonly interval: IntervalView | null
  readonly life: LifeView | null
  readonly proposals: ChangeProposal[]
  /** What a longer interval still needs to be proposed, in words; null: nothing asks for one. */
  readonly missing: string | null
  /** Single looks at what is on the car, from which no life is learned. */
  readonly singleLooks: number
  /** What keeps the life from being read (inspections that contradict each other), in words. */
  readonly trouble: string | null
}

export type IntervalView = ReturnType<typeof intervalView>

/** What is known of how long the topper that is on the car lasts. */
export type LifeView = ReturnType<typeof lifeView>

/** The life of what is on a car, with what it proposes for the plan that renews it. */
export async function carLife(
  tx: Tx,
  rules: UpkeepRules,
  day: UpkeepDay,
  car: { layers: readonly LayerView[]; exposure: Exposure; kept: readonly KeptVisitPlan[] },
): Promise<CarLife> {
  const layer = car.layers.find(each => each.stage === 'topper') ?? car.layers[0]
  const product = layer && (await productLives(tx)).get(layer.productId)
  if (!layer || !product)
    return { interval: null, life: null, proposals: [], missing: null, singleLooks: 0, trouble: null }
  const interval = scaled(product.intervalDays, car.exposure, rules)
  const shown = intervalView(product, interval)
  const singleLooks = await tx.inspection.count({
    where: { layerId: layer.id, voidedAt: null, secondLook: false },
  })
  const prior = priorOf(product, rules.level)
  let learned: LearnedLife
  try {
    learned = learnLife(await observedLives(tx, product.productId, interval), prior, rules.level)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return {
      interval: shown,
      life: null,
      proposals: [],
      missing: null,
      singleLooks,
      trouble: error.message,
    }
  }
  const plan = car.kept.find(each => each.plan.kind === 'topper' && each.plan.anchor.to === 'last-done')
  return {
    interval: shown,
    life: lifeView(product, layer, interval, learned, prior),
    proposals: plan ? await proposalsFor(tx, day, plan, learned, interval.multiplier, layer) : [],
    missing: plan && learned.lives > 0 ? missingWords(plan, learned, interval.multiplier, day.zone) : null,
    singleLooks,
    trouble: null,
  }
}

/** Ages in this car's own days since the layer was laid. */
function lifeView(
  { productName }: ProductLifeView,
  { id: layerId, laidOn, ageDays }: LayerView,
  { exposureClass, multiplier }: ScaledInterval,
  learned: LearnedLife,
  prior: LifePrior,
) {
  const { level, renewAge, range, confidence, readings, lives, ended, priorWeight } = learned
  const until = Math.max(2 * renewAge, ageDays / multiplier, ...readings.map(r => r.to ?? r.from))
  const inDays = (age: number) => Math.round(age * multiplier)
  return {
    productName,
    layerId,
    laidOn,
    ageDays,
    exposureClass,
    /** The share of such toppers that should still work when renewed, as the shop chose. */
    level,
    renewDays: Math.floor(renewAge * multiplier),
    /** At `confidence`; `highDays` null: no upper end known. */
    lowDays: Math.floor(range.low * multiplier),
    highDays: range.high === null ? null : Math.floor(range.high * multiplier),
    confidence,
    curve: lifeCurve(learned, prior, until, curvePoints).map(point => ({
      ...point,
      age: point.age * multiplier,
    })),
    /** Inspections of all cars of this exposure class; ages apart by less than a day come out as one. */
    readings: pooled(
      readings.map(({ from, to, count = 1 }) => ({
        from: inDays(from),
        to: to === null ? null : inDays(to),
        count,
      })),
    ),
    lives,
    ended,
    /** 1: all of it is the data sheet's or the rule of thumb's; towards 0 with many inspections. */
    priorWeight,
    sentences: learnedWords(learned, multiplier),
  }
}

function intervalView(product: ProductLifeView, interval: ScaledInterval) {
  const { days, multiplier, steps, held } = interval
  return {
    productDays: product.intervalDays,
    /** Where the product's interval comes from. */
    productMark: product.mark,
    days,
    multiplier,
    steps,
    held,
    sentence: intervalWords(product.intervalDays, interval),
  }
}

/** Only a look after the wash tells clogged from gone. */
const learnable = { voidedAt: null, secondLook: true } as const

/** Every layer of a product that was looked at on a car of this exposure class, its ages at ordinary exposure. */
async function observedLives(tx: Tx, productId: string, car: ScaledInterval): Promise<ObservedLife[]> {
  // Sorted here: asked for in order, the looks of more than a thousand layers are refused by SQLite.
  const layers = await tx.layer.findMany({
    where: { productId, inspections: { some: learnable } },
    include: { inspections: { where: learnable } },
  })
  return layers
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ laidOn, inspections }) => ({
      laidOn,
      inspections: inspections.sort((a, b) => (a.onDay < b.onDay ? -1 : a.onDay > b.onDay ? 1 : 0)),
    }))
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
  plan: KeptVisitPlan,
  learned: LearnedLife,
  multiplier: number,
  layer: LayerView,
): Promise<ChangeProposal[]> {
  const looks = await tx.inspection.findMany({
    where: { layerId: layer.id, voidedAt: null },
    orderBy: [{ onDay: 'desc' }, { id: 'desc' }],
    take: 1,
  })
  const look = looks[0]
  // A single look that found it gone may have seen it clogged: that brings a visit forward, and never puts one off.
  const counts = look && (look.secondLook || !look.working)
  const proposals = [
    // With nothing seen, the plan's interval is the rule of thumb's, and that stands until the desk says otherwise.
    learned.lives > 0 ? proposeInterval(plan, learned, multiplier, day) : null,
    counts
      ? proposeVisit(
          plan,
          learned,
          multiplier,
          { laidOn: layer.laidOn, on: look.onDay, working: look.working, single: !look.secondLook },
          day,
        )
      : null,
  ]
  return proposals.filter(each => each !== null)
}
