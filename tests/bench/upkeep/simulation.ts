/**
 * A shop's toppers over the years, invented but not tuned: each car has a way of life, its toppers last by a Weibull
 * law the shop does not know, owners come somewhere in the window or late, and at each visit the topper is looked at and
 * renewed. The same cars, lives and owners are run under different rules for the interval.
 */

import type { ExposureClass } from '../../../main/domain/upkeep/exposure/interval.ts'
import {
  type LifePrior,
  learnLife,
  type ObservedLife,
  STARTING_FACTORS,
  scaleInterval,
} from '../../../main/domain/upkeep/index.ts'
import type { DatedInspection } from '../../../main/domain/upkeep/life/learn.ts'
import { WORTH_PROPOSING } from '../../../main/domain/upkeep/plan/propose.ts'
import { weibullThrough } from '../../domain/upkeep/life/weibullThrough.ts'
import { normalDraw, pick, type Random, seeded } from '../simulation/random.ts'

export const SHEET_DAYS = 180
export const LEVEL = 0.9
const YEARS = 8
const JOIN_DAYS = 730
const END = YEARS * 365
const LEARN_EVERY = 90

/** What is true, and the shop does not know. */
export interface Truth {
  /** The age, over the data sheet's, at which one in ten toppers of a plain car has failed. */
  readonly sheetFactor: number
  readonly shape: number
}

/**
 * `fixed`: the same days for every car. `known`: a part of the age that each car's own topper is good for, which no shop
 * can know. `learned`: the app's.
 */
export type IntervalRule =
  | { readonly rule: 'fixed'; readonly days: number }
  | { readonly rule: 'known'; readonly part: number }
  | { readonly rule: 'learned' }

export interface Outcome {
  readonly visits: number
  /** Toppers found gone. */
  readonly failed: number
  /** Years that all cars together were looked after. */
  readonly carYears: number
}

interface Car {
  readonly joinsOn: number
  readonly multiplier: number
  readonly exposureClass: ExposureClass
  readonly trueAge: number
  /** The car's own run of luck, the same under every rule. */
  readonly draw: Random
}

const PRIOR: LifePrior = { age: SHEET_DAYS, level: LEVEL, shape: 2.5, ageSpread: 0.35, shapeSpread: 0.35 }

/**
 * How owners who pay for a coating treat their cars: mostly well. Weights of the choices of `STARTING_FACTORS` in their
 * order; assumed, no source.
 */
const WAYS: Readonly<Record<string, readonly number[]>> = {
  kept: [5, 2, 3],
  distance: [6, 10, 3, 1],
  climate: [12, 3, 3, 2],
  wash: [12, 5, 3],
  washed: [5, 12, 3],
}

/** The cars of a seed: mostly ordinary lives, some hard, some easy; the factors are right only on the whole. */
function carsOf(count: number, truth: Truth, seed: number): Car[] {
  const random = seeded(seed)
  return Array.from({ length: count }, (_, i) => {
    const exposure = Object.fromEntries(
      STARTING_FACTORS.map(factor => [
        factor.id,
        pick(
          random,
          factor.choices.map((one, n) => [one.id, WAYS[factor.id]![n]!] as const),
        ),
      ]),
    )
    const { multiplier, exposureClass } = scaleInterval(SHEET_DAYS, exposure, STARTING_FACTORS)
    const own = Math.exp(0.15 * normalDraw(random))
    return {
      joinsOn: Math.floor(random() * JOIN_DAYS),
      multiplier,
      exposureClass,
      // The factors say too much: the true effect is three quarters of theirs, and each car strays from it.
      trueAge: SHEET_DAYS * truth.sheetFactor * multiplier ** 0.75 * own,
      draw: seeded(seed * 1000 + i),
    }
  })
}

/** When owners come: anywhere in the window (21 days early to 7 late), one in ten up to six weeks later still. */
function delayOf(random: Random): number {
  const inWindow = Math.floor(random() * 29) - 21
  const late = random()
  return late < 0.1 ? inWindow + Math.floor(late * 420) : inWindow
}

const START = Temporal.PlainDate.from('2026-01-01')
const dateOf = (day: number) => START.add({ days: day }).toString()

/** Runs `count` cars for eight years under a rule. */
export function simulate(count: number, truth: Truth, seed: number, interval: IntervalRule): Outcome {
  const cars = carsOf(count, truth, seed).map(car => ({ ...car, laidOn: 0, lasts: 0, visitOn: 0 }))
  const seen: Record<ExposureClass, ObservedLife[]> = { gentle: [], ordinary: [], harsh: [] }
  const ages: Record<ExposureClass, number> = { gentle: SHEET_DAYS, ordinary: SHEET_DAYS, harsh: SHEET_DAYS }
  const dueAge = (car: Car) => {
    if (interval.rule === 'fixed') return interval.days
    return Math.floor(
      interval.rule === 'known' ? interval.part * car.trueAge : ages[car.exposureClass] * car.multiplier,
    )
  }
  const lay = (car: (typeof cars)[number], on: number) => {
    const life = weibullThrough(car.trueAge, LEVEL, truth.shape)
    car.laidOn = on
    car.lasts = life.scale * (-Math.log(1 - car.draw())) ** (1 / life.shape)
    car.visitOn = on + Math.max(1, dueAge(car) + delayOf(car.draw))
  }
  for (const car of cars) lay(car, car.joinsOn)
  let visits = 0
  let failed = 0
  for (let day = 0; day < END; day++) {
    if (interval.rule === 'learned' && day % LEARN_EVERY === 0)
      for (const name of ['gentle', 'ordinary', 'harsh'] as const) {
        const { renewAge, cautiousAge } = learnLife(seen[name], PRIOR, LEVEL)
        // As it is proposed to the desk: fewer days by the middle, more by the cautious end alone.
        const age = renewAge < ages[name] ? renewAge : Math.max(ages[name], cautiousAge)
        const change = Math.abs(age - ages[name])
        if (change >= WORTH_PROPOSING.days && change >= WORTH_PROPOSING.share * ages[name]) ages[name] = age
      }
    for (const car of cars) {
      if (car.visitOn !== day) continue
      const age = day - car.laidOn
      const working = car.lasts > age
      visits++
      if (!working) failed++
      // Ages are kept as those of a plain car, in whole days.
      const look: DatedInspection = {
        age: Math.max(1, Math.round(age / car.multiplier)),
        working,
        on: dateOf(day),
      }
      seen[car.exposureClass].push({ inspections: [look] })
      lay(car, day)
    }
  }
  return { visits, failed, carYears: cars.reduce((sum, car) => sum + (END - car.joinsOn) / 365, 0) }
}

/** The outcomes of several seeds together. */
export function simulateAll(
  count: number,
  truth: Truth,
  seeds: readonly number[],
  interval: IntervalRule,
): { visitsAYear: number; goneShare: number } {
  const all = seeds.map(seed => simulate(count, truth, seed, interval))
  const sum = (of: (outcome: Outcome) => number) => all.reduce((total, outcome) => total + of(outcome), 0)
  const visits = sum(each => each.visits)
  return { visitsAYear: visits / sum(each => each.carYears), goneShare: sum(each => each.failed) / visits }
}

/**
 * Visits a year of a rule tuned in hindsight: of its settings, from the most cautious on, the two between which the given
 * share is gone before the visit, and the visits in between by the same part. Refuses a share that no setting comes to.
 */
export function visitsAtShare(
  rules: readonly IntervalRule[],
  goneShare: number,
  outcome: (rule: IntervalRule) => { visitsAYear: number; goneShare: number },
): number {
  let before = outcome(rules[0]!)
  for (const rule of rules.slice(1)) {
    const now = outcome(rule)
    if (before.goneShare <= goneShare && goneShare <= now.goneShare) {
      const part = (goneShare - before.goneShare) / (now.goneShare - before.goneShare || 1)
      return before.visitsAYear + part * (now.visitsAYear - before.visitsAYear)
    }
    before = now
  }
  throw new Error(`no setting has ${goneShare} gone before the visit`)
}
