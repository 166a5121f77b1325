/** A straight line through readings: how one figure follows another, and how far a line may be believed. */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { median } from './median.ts'
import { meanOf, sum } from './moments.ts'
import { checkNumber, checkNumbers } from './numbers.ts'
import { tQuantile } from './tQuantile.ts'

/** x and y of one reading. */
export type Point = readonly [number, number]

export interface LineFit {
  readonly n: number
  readonly intercept: number
  readonly slope: number
  /** Of a reading about the line; 0 through two points. */
  readonly residualSd: number
  readonly seSlope: number
  readonly seIntercept: number
  /** Share of the spread of y that the line accounts for, 0 to 1. */
  readonly rSquared: number
  readonly meanX: number
  /** Sum of squared distances of x from its mean. */
  readonly spreadX: number
}

/**
 * The least-squares line y = intercept + slope · x with its standard errors (NIST/SEMATECH e-Handbook 4.1.4.1).
 * @throws Refusal `too-few` where fewer than two different x are given, `reading-bad` for what is no number.
 */
export function fitLine(points: readonly Point[]): LineFit {
  const { xs, ys } = columnsOf(points)
  if (new Set(xs).size < 2)
    refuse('too-few', { points }, say('A line needs readings at two different places; take another.'))
  const n = points.length
  const [meanX, meanY] = [meanOf(xs), meanOf(ys)]
  const awayX = xs.map(x => x - meanX)
  const spreadX = sum(awayX.map(d => d * d))
  const slope = sum(awayX.map((d, i) => d * (ys[i]! - meanY))) / spreadX
  const left = sum(awayX.map((d, i) => (ys[i]! - meanY - slope * d) ** 2))
  const spreadY = sum(ys.map(y => (y - meanY) ** 2))
  const residualSd = n > 2 ? Math.sqrt(left / (n - 2)) : 0
  return {
    n,
    intercept: meanY - slope * meanX,
    slope,
    residualSd,
    seSlope: residualSd / Math.sqrt(spreadX),
    seIntercept: residualSd * Math.sqrt(1 / n + (meanX * meanX) / spreadX),
    rSquared: spreadY > 0 ? 1 - left / spreadY : 1,
    meanX,
    spreadX,
  }
}

export interface OriginFit {
  readonly slope: number
  readonly seSlope: number
  readonly residualSd: number
  /** Of the squares of y themselves, not about their mean. */
  readonly rSquaredUncentred: number
}

/**
 * The least-squares line y = slope · x, for what is nothing where the other is nothing, such as an instrument's scale.
 * Source: NIST StRD, NoInt1 (definitions of its certified values).
 * @throws Refusal `too-few` without an x other than 0, `reading-bad` for what is no number.
 */
export function fitThroughOrigin(points: readonly Point[]): OriginFit {
  const { xs, ys } = columnsOf(points)
  const squares = sum(xs.map(x => x * x))
  if (!(squares > 0))
    refuse('too-few', { points }, say('A line through 0 needs a reading that is not 0; take one.'))
  const slope = sum(xs.map((x, i) => x * ys[i]!)) / squares
  const left = sum(xs.map((x, i) => (ys[i]! - slope * x) ** 2))
  const residualSd = points.length > 1 ? Math.sqrt(left / (points.length - 1)) : 0
  const squaresY = sum(ys.map(y => y * y))
  return {
    slope,
    seSlope: residualSd / Math.sqrt(squares),
    residualSd,
    rSquaredUncentred: squaresY > 0 ? 1 - left / squaresY : 1,
  }
}

export interface Prediction {
  readonly y: number
  /** Where the line itself lies there. */
  readonly mean: { readonly low: number; readonly high: number }
  /** Where the next reading there lies. */
  readonly next: { readonly low: number; readonly high: number }
}

/**
 * The line at `x`, with the ranges that hold the line and the next reading with `confidence` (0.95), by Student's t.
 * @throws Refusal `too-few` for a line through fewer than three readings, which says nothing of its own error.
 */
export function predict(fit: LineFit, x: number, confidence = 0.95): Prediction {
  checkNumber(x, 'x')
  if (fit.n < 3)
    refuse('too-few', { points: fit.n }, say('Three readings at least are needed to say how sure a line is.'))
  const t = tQuantile((1 + confidence) / 2, fit.n - 2)
  const y = fit.intercept + fit.slope * x
  const ofLine = 1 / fit.n + (x - fit.meanX) ** 2 / fit.spreadX
  const within = (share: number) => {
    const half = t * fit.residualSd * Math.sqrt(share)
    return { low: y - half, high: y + half }
  }
  return { y, mean: within(ofLine), next: within(1 + ofLine) }
}

/** More readings make more pairs than anybody waits for. */
const mostTrend = 500

export interface Trend {
  readonly slope: number
  readonly intercept: number
}

/**
 * The trend of readings of which some may be plainly wrong: the middle of all slopes between two of them (Theil 1950,
 * Sen 1968), and the middle of what that leaves of y as intercept.
 * @throws Refusal `too-few` as `fitLine`, `too-many` beyond 500 readings.
 */
export function trendOf(points: readonly Point[]): Trend {
  if (points.length > mostTrend)
    refuse(
      'too-many',
      { points: points.length },
      say('{points} readings are too many for a trend; give the last {mostTrend}.', {
        points: points.length,
        mostTrend,
      }),
    )
  const { xs, ys } = columnsOf(points)
  const slopes: number[] = []
  for (let i = 0; i < xs.length; i++)
    for (let j = i + 1; j < xs.length; j++)
      if (xs[i] !== xs[j]) slopes.push((ys[j]! - ys[i]!) / (xs[j]! - xs[i]!))
  if (slopes.length === 0)
    refuse('too-few', { points }, say('A trend needs readings at two different times; take another.'))
  const slope = median(slopes)
  return { slope, intercept: median(xs.map((x, i) => ys[i]! - slope * x)) }
}

function columnsOf(points: readonly Point[]): { xs: number[]; ys: number[] } {
  for (const [i, point] of points.entries()) checkNumbers(point, `points.${i}`)
  return { xs: points.map(([x]) => x), ys: points.map(([, y]) => y) }
}
