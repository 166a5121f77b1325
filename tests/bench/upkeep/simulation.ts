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

export type IntervalRule = { readonly rule: 'fixed'; readonly days: number } | { readonly rule: 'learned' }

export interface Outcome {
  readonly visits: number
  /** Toppers found gone. */
  readonly failed: number
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
  const lay = (car: (typeof cars)[number], on: number) => {
    const life = weibullThrough(car.trueAge, LEVEL, truth.shape)
    car.laidOn = on
    car.lasts = life.scale * (-Math.log(1 - car.draw())) ** (1 / life.shape)
    const dueAge =
      interval.rule === 'fixed' ? interval.days : Math.floor(ages[car.exposureClass] * car.multiplier)
    car.visitOn = on + Math.max(1, dueAge + delayOf(car.draw))
  }
  for (const car of cars) lay(car, car.joinsOn)
  let visits = 0
  let failed = 0
  for (let day = 0; day < END; day++) {
    if (interval.rule === 'learned' && day % LEARN_EVERY === 0)
      for (const name of ['gentle', 'ordinary', 'harsh'] as const) {
        const { renewAge } = learnLife(seen[name], PRIOR, LEVEL)
        const change = Math.abs(renewAge - ages[name])
        if (change >= WORTH_PROPOSING.days && change >= WORTH_PROPOSING.share * ages[name])
          ages[name] = renewAge
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
  return { visits, failed }
}

/** The longest fixed interval that fails no more often than a share: what a shop could reach by trial alone. */
export function fixedAsSafe(
  count: number,
  truth: Truth,
  seed: number,
  share: number,
): Outcome & { days: number } {
  let best: (Outcome & { days: number }) | null = null
  for (let days = 60; days <= 400; days += 5) {
    const outcome = simulate(count, truth, seed, { rule: 'fixed', days })
    if (outcome.failed / outcome.visits > share && best) break
    best = { ...outcome, days }
  }
  return best!
}
