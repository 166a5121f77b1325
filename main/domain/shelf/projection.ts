/**
 * The shelf ahead, day by day: on hand, less what booked jobs draw, less unforeseen use, less lots that expire, plus
 * deliveries under way. As a band: `low` is a bad case that is undercut in at most one of ten, with much use and late
 * deliveries; `high` the good case on the other side; `likely` follows the expected values.
 */
import { addTo } from './chances.ts'
import type { Holding } from './lot.ts'
import { normalQuantile } from './normal.ts'
import { type Arrival, type Course, followStock } from './track.ts'
import type { UseAhead } from './useAhead.ts'

/** A draw the schedule holds. */
export interface BookedDraw {
  readonly jobId: string
  readonly stepId: string
  /** Day number. */
  readonly day: number
  /** Epoch minute the step starts. */
  readonly at: number
  readonly centi: number
  /** Spread of the recipe for this size of vehicle. */
  readonly sdCenti: number
}

/** Goods ordered and not here. Days are day numbers; early and late bound eight in ten deliveries. */
export interface Delivery {
  readonly orderId: string
  readonly earlyDay: number
  readonly likelyDay: number
  readonly lateDay: number
  readonly centi: number
  /** Last day of use the goods are expected to carry; null: they keep. */
  readonly lastDay: number | null
}

export interface ProjectionInput {
  /** Day number; the projection starts at its end. */
  readonly today: number
  /** Days to look ahead. */
  readonly days: number
  readonly holdings: readonly Holding[]
  readonly booked: readonly BookedDraw[]
  readonly deliveries: readonly Delivery[]
  readonly unforeseen: UseAhead
  readonly shopOpen: (day: number) => boolean
}

/** Index 0 is the end of today, index i the end of the i-th day after. Amounts in centi; below zero: jobs wait. */
export interface Projection {
  readonly today: number
  readonly likely: Float64Array
  readonly low: Float64Array
  readonly high: Float64Array
  readonly booked: Float64Array
  readonly unforeseen: Float64Array
  readonly arriving: Float64Array
  readonly expiring: Float64Array
  readonly dry: DryMoment | null
  /** When the bad case runs dry; null when not within the days looked at. */
  readonly dryEarly: DryMoment | null
}

/** When a product runs dry and the job it hits. */
export interface DryMoment {
  readonly day: number
  /** The start of the step that finds too little; null where unforeseen use empties the shelf before any job. */
  readonly at: number | null
  /** The first booked job that goes short; null when none is booked from then on. */
  readonly jobId: string | null
  readonly stepId: string | null
  /** What that job lacks; 0 where no job is hit. */
  readonly missingCenti: number
}

// One case in ten lies beyond each edge of the band.
const Z = normalQuantile(0.9)

/** Projects one product. Draws before tomorrow and after the last day are left out. */
export function projectStock(input: ProjectionInput): Projection {
  const { today, days, holdings, deliveries } = input
  const booked = new Float64Array(days + 1)
  const bookedVariance = new Float64Array(days + 1)
  for (const draw of input.booked) {
    const i = draw.day - today
    if (i < 1 || i > days) continue
    addTo(booked, i, draw.centi)
    addTo(bookedVariance, i, draw.sdCenti ** 2)
  }
  const unforeseen = new Float64Array(days + 1)
  const much = new Float64Array(days + 1)
  const little = new Float64Array(days + 1)
  let open = 0
  let bookedSum = 0
  let varianceSum = 0
  let muchSum = 0
  let littleSum = 0
  for (let i = 1; i <= days; i++) {
    const before = input.unforeseen.meanCenti[open] ?? 0
    if (input.shopOpen(today + i)) open++
    const mean = input.unforeseen.meanCenti[open] ?? before
    const variance = input.unforeseen.variance[open] ?? 0
    unforeseen[i] = mean - before
    bookedSum += booked[i] ?? 0
    varianceSum += bookedVariance[i] ?? 0
    // Use only ever adds up: a later quantile is never below an earlier one.
    const most = Math.max(muchSum, bookedSum + spreadUse(mean, variance, varianceSum, Z))
    const least = Math.max(littleSum, Math.min(most, bookedSum + spreadUse(mean, variance, varianceSum, -Z)))
    much[i] = most - muchSum
    little[i] = least - littleSum
    muchSum = most
    littleSum = least
  }
  const expected = booked.map((centi, i) => centi + (unforeseen[i] ?? 0))
  const follow = (use: Float64Array, when: 'earlyDay' | 'likelyDay' | 'lateDay') =>
    followStock(holdings, arrivalsOn(deliveries, when), today, use)
  const likely = follow(expected, 'likelyDay')
  const low = follow(much, 'lateDay')
  const high = follow(little, 'earlyDay')
  const arriving = new Float64Array(days + 1)
  for (const { likelyDay, centi } of deliveries)
    if (likelyDay > today && likelyDay <= today + days) addTo(arriving, likelyDay - today, centi)
  return {
    today,
    likely: likely.stockCenti,
    low: low.stockCenti,
    high: high.stockCenti,
    booked,
    unforeseen,
    arriving,
    expiring: likely.expiredCenti,
    dry: dryMoment(input, likely),
    dryEarly: dryMoment(input, low),
  }
}

/**
 * A quantile of cumulative use apart from the booked mean: unforeseen use has a gamma's lean to the large side (cube-root
 * rule of Wilson and Hilferty 1931), and the recipes' spread widens it as independent normal errors do.
 */
function spreadUse(mean: number, variance: number, bookedVariance: number, z: number): number {
  const sd = Math.sqrt(variance)
  const wider = z * (Math.sqrt(variance + bookedVariance) - sd)
  if (mean <= 0 || variance <= 0) return mean + wider
  const shape = mean ** 2 / variance
  const root = 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape))
  return mean * Math.max(0, root) ** 3 + wider
}

function arrivalsOn(deliveries: readonly Delivery[], when: 'earlyDay' | 'likelyDay' | 'lateDay'): Arrival[] {
  return deliveries.map(({ [when]: day, centi, lastDay }) => ({ day, centi, lastDay }))
}

/**
 * The first day whose use a course cannot meet, and within it the first booked draw that finds too little. Stock that is
 * exactly used up is not dry: nobody lacks anything.
 */
function dryMoment(input: ProjectionInput, course: Course): DryMoment | null {
  const i = course.afterUseCenti.findIndex((centi, day) => day > 0 && centi < -0.5)
  if (i < 0) return null
  const day = input.today + i
  let left = course.stockCenti[i - 1] ?? 0
  const ordered = input.booked.filter(draw => draw.day >= day).sort((a, b) => a.at - b.at)
  for (const draw of ordered) {
    if (draw.day > day) break
    if (left < draw.centi - 0.5)
      return {
        day,
        at: draw.at,
        jobId: draw.jobId,
        stepId: draw.stepId,
        missingCenti: draw.centi - Math.max(0, left),
      }
    left -= draw.centi
  }
  const next = ordered.find(draw => draw.day > day)
  if (!next) return { day, at: null, jobId: null, stepId: null, missingCenti: 0 }
  const missingCenti = Math.max(
    0,
    Math.min(next.centi, next.centi - (course.stockCenti[next.day - input.today - 1] ?? 0)),
  )
  return { day, at: null, jobId: next.jobId, stepId: next.stepId, missingCenti }
}
