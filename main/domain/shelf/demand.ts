/**
 * What the shelf will be asked for, learned from the ledger. A draw that was booked in time needs no safety stock: the
 * schedule already knows it. What has to be guarded against is the rest, and how large that rest is depends on how far
 * ahead one looks. For the k-th open day from now it is every draw that will be booked, or walk in, between now and
 * then. So each past draw carries the day it became known, and the unforeseen use of the k-th day is taken from the
 * draws with fewer than k days' notice.
 *
 * Days here are open days, numbered by the caller: nothing is drawn while the shop is closed.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import {
  addIndependent,
  type Chances,
  disturbed,
  histogram,
  meanOf,
  mixture,
  moreOften,
  NOTHING,
  varianceOf,
} from './chances.ts'

export interface PastDraw {
  /** Number of the open day it was drawn on. */
  readonly usedOn: number
  /** Number of the open day at whose end the schedule first knew of it; null for use nobody booked. */
  readonly knownOn: number | null
  readonly centi: number
  /** What the recipe expected; null for use nobody booked. */
  readonly expectedCenti: number | null
}

export interface History {
  /** First open day looked at. */
  readonly from: number
  /** The open day after the last. */
  readonly to: number
  readonly draws: readonly PastDraw[]
}

/** Demand per open day and over the days ahead, on a lattice of `stepCenti`. */
export interface Demand {
  readonly stepCenti: number
  readonly cap: number
  /** Draws on record. */
  readonly draws: number
  /** Expected use per open day, booked or not, in centi. */
  readonly perDayCenti: number
  /** Variance of one open day's use, centi squared. */
  readonly perDayVariance: number
  /** One open day's whole use. */
  readonly day: Chances
  /** `ahead[k]`: what will be drawn over the next k open days that is not booked yet; `ahead[0]` is nothing. */
  readonly ahead: readonly Chances[]
  /** Expected cells of `ahead[k]`, before any disturbance. */
  readonly aheadMeanCenti: readonly number[]
  /** `surprise[k]`: what the k-th open day will draw that is not booked yet. */
  readonly surprise: readonly Chances[]
  /** One unforeseen draw at the k-th day, given that there is one. */
  readonly drawSize: readonly Chances[]
  /** Which part of the draws of the k-th day nobody has booked by now. */
  readonly unforeseenShare: readonly number[]
}

export interface DemandOptions {
  readonly stepCenti: number
  /** How many open days ahead to look. */
  readonly horizon: number
  /** Cells to keep; what lies beyond is gathered in the last. */
  readonly cap?: number
  /** How the expected level compares with the mean of the history (1: the mean itself), from `estimateLevel`. */
  readonly levelFactor?: number
}

// Three points and weights that match a normal variable's first five moments (Gauss and Hermite).
const POINTS = [-Math.sqrt(3), 0, Math.sqrt(3)] as const
const WEIGHTS = [1 / 6, 2 / 3, 1 / 6] as const

/**
 * Learns demand from a history. The rate is itself uncertain: with `n` draws on record its relative variance is about
 * (1 + cv²) / n, and the days ahead are mixed over three rates that carry this variance. Without it the order point
 * would trust a thin history too much and the service would fall short of its target.
 */
export function learnDemand(history: History, options: DemandOptions): Demand {
  const { stepCenti, horizon, cap = 400, levelFactor = 1 } = options
  const days = history.to - history.from
  if (!(days > 0))
    refuse('history-empty', { history: days }, say('The history holds no day; let it end after it begins.'))
  if (!(stepCenti > 0)) refuse('step-bad', { stepCenti }, say('The lattice step must be above 0.'))
  const draws = history.draws.filter(draw => draw.usedOn >= history.from && draw.usedOn < history.to)
  const sorted = draws.map(draw => ({ ...draw, notice: noticeOf(draw) })).sort((a, b) => a.notice - b.notice)

  const day = moreOften(perDay(totals(sorted, stepCenti), days), levelFactor)
  const sigma = Math.min(0.55, Math.sqrt(relativeVariance(draws)))
  const noise = bookedNoise(draws, stepCenti)
  const tracks: Chances[] = POINTS.map(() => NOTHING)
  const ahead: Chances[] = [NOTHING]
  const aheadMeanCenti = [0]
  const drawSize: Chances[] = [NOTHING]
  const unforeseenShare = [0]
  const surprises: Chances[] = [NOTHING]
  let count = 0
  let surprise: Chances = NOTHING
  let disturbance = 0
  for (let k = 1; k <= horizon; k++) {
    let end = count
    while (end < sorted.length && (sorted[end]?.notice ?? k) < k) end++
    if (end > count || k === 1) {
      const known = sorted.slice(0, end)
      surprise = perDay(totals(known, stepCenti), days)
      drawSize[k] = histogram(
        known.map(draw => draw.centi / stepCenti),
        0,
      )
    } else drawSize[k] = drawSize[k - 1] ?? NOTHING
    count = end
    surprises.push(moreOften(surprise, levelFactor))
    unforeseenShare.push(sorted.length === 0 ? 1 : count / sorted.length)
    POINTS.forEach((point, i) => {
      tracks[i] = addIndependent(
        tracks[i] ?? NOTHING,
        moreOften(surprise, levelFactor * (1 + point * sigma)),
        cap,
      )
    })
    disturbance += ((sorted.length - count) / days) * noise
    aheadMeanCenti.push((aheadMeanCenti[k - 1] ?? 0) + meanOf(surprise) * levelFactor * stepCenti)
    ahead.push(disturbed(mixture(tracks, WEIGHTS), disturbance, cap))
  }
  return {
    stepCenti,
    cap,
    draws: draws.length,
    perDayCenti: meanOf(day) * stepCenti,
    perDayVariance: varianceOf(day) * stepCenti ** 2,
    day,
    ahead,
    aheadMeanCenti,
    surprise: surprises,
    drawSize,
    unforeseenShare,
  }
}

/** Days between the day a draw became known and the day it was drawn; use nobody booked has none. */
function noticeOf(draw: PastDraw): number {
  return draw.knownOn === null ? 0 : Math.max(0, draw.usedOn - draw.knownOn)
}

function totals(draws: readonly PastDraw[], stepCenti: number): Map<number, number> {
  const byDay = new Map<number, number>()
  for (const draw of draws) byDay.set(draw.usedOn, (byDay.get(draw.usedOn) ?? 0) + draw.centi / stepCenti)
  return byDay
}

function perDay(byDay: Map<number, number>, days: number): Chances {
  return histogram(byDay.values(), days - byDay.size)
}

function relativeVariance(draws: readonly PastDraw[]): number {
  if (draws.length === 0) return 0
  const mean = draws.reduce((sum, draw) => sum + draw.centi, 0) / draws.length
  const squares = draws.reduce((sum, draw) => sum + draw.centi ** 2, 0) / draws.length
  return mean === 0 ? 0 : squares / mean ** 2 / draws.length
}

/** Mean squared miss of the recipes on booked draws, in cells squared. */
function bookedNoise(draws: readonly PastDraw[], stepCenti: number): number {
  const misses = draws.flatMap(({ centi, expectedCenti }) =>
    expectedCenti === null ? [] : (centi - expectedCenti) / stepCenti,
  )
  return misses.length === 0 ? 0 : misses.reduce((sum, miss) => sum + miss ** 2, 0) / misses.length
}
