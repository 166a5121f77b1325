import { Refusal, refuse } from '../../refusal.ts'
import type { Confidence } from './confidence.ts'
import { fitLife, type LifePrior, objectiveAt } from './fit.ts'
import { type AgeRange, ageRange } from './range.ts'
import { countLives, type Inspection, type LifeReading, pooled, readingOf } from './reading.ts'
import { ageAtSurvival, checkLevel, type Weibull } from './weibull.ts'

/** An inspection with the day (`YYYY-MM-DD`) it was made. */
export interface DatedInspection extends Inspection {
  readonly on: string
}

/** One coat of protectant on one car, from the day it was laid: everything seen of it. */
export interface ObservedLife {
  readonly inspections: readonly DatedInspection[]
}

export interface LearnedLife {
  readonly life: Weibull
  /** The share that should still work when it is renewed. */
  readonly level: number
  /** The age at which the share still working has fallen to `level`. */
  readonly renewAge: number
  readonly range: AgeRange
  /** The age that still keeps `level` at the cautious end: nine chances in ten that it lies no lower. */
  readonly cautiousAge: number
  readonly confidence: Confidence
  /** What it was learned from. */
  readonly readings: readonly LifeReading[]
  readonly lives: number
  readonly ended: number
  /** How much of what is known of the age is still the prior's: 1 with no readings, towards 0 with many. */
  readonly priorWeight: number
  /** The day of the last look that found one gone, from which the shape dates; null: the shape is the prior's. */
  readonly shapeSettledOn: string | null
}

/**
 * What all inspections of a product in one exposure class say about its life, starting from the prior.
 *
 * It is fitted in two strokes. The shape comes from a fit of both numbers to everything seen up to the last look that
 * found one gone; then, with that shape held, the age is fitted to everything seen. Done in one stroke, a straggler
 * still working at a great age widens the curve, and so pulls its early end down: good news would bring renewals
 * forward. Done in two, a later "still working" can only lengthen the life, because with the shape held its
 * likelihood rises with the age everywhere; the next "gone" then settles the shape anew. A "still working" entered
 * late, dated before the last "gone", is a correction and may move either.
 *
 * Ages are in days at the reference exposure. Refuses levels outside 0..1, priors that are none, and looks that
 * contradict each other.
 */
export function learnLife(
  lives: readonly ObservedLife[],
  prior: LifePrior,
  level = 0.9,
  confidence: Confidence = 0.95,
): LearnedLife {
  checkLevel(level)
  const readings = readingsOf(lives)
  const settledOn = lastGone(lives)
  const shape = settledOn === null ? prior.shape : fitLife(readingsOf(lives, settledOn), { prior }).life.shape
  const { life } = fitLife(readings, { prior, shape })
  const renewAge = ageAtSurvival(life, level)
  const range = ageRange(readings, prior, level, confidence)
  return {
    life,
    level,
    renewAge,
    // The range comes from the fit in one stroke; should the two part, it still has to hold the age it speaks of.
    range: {
      low: Math.min(range.low, renewAge),
      high: range.high === null ? null : Math.max(range.high, renewAge),
    },
    // The low end of what holds four chances in five has the tenth below it.
    cautiousAge: Math.min(renewAge, ageRange(readings, prior, level, 0.8).low),
    confidence,
    readings,
    ...countLives(readings),
    priorWeight: priorWeight(readings, prior, life),
    shapeSettledOn: settledOn,
  }
}

/** The readings of lives, equal ones counted together, as they were known at the end of a day, or as they are known now. */
export function readingsOf(lives: readonly ObservedLife[], asOf?: string): LifeReading[] {
  const readings: LifeReading[] = []
  lives.forEach(({ inspections }, i) => {
    const known = asOf === undefined ? inspections : inspections.filter(look => look.on <= asOf)
    try {
      const reading = readingOf(known)
      if (reading) readings.push(reading)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      refuse(error.code, { [`lives.${i}.${error.field}`]: error.value }, error.message)
    }
  })
  return pooled(readings)
}

function lastGone(lives: readonly ObservedLife[]): string | null {
  let last: string | null = null
  for (const { inspections } of lives)
    for (const look of inspections) if (!look.working && (last === null || look.on > last)) last = look.on
  return last
}

/** The prior's share of the curvature about the fitted age: of what is known, how much was believed beforehand. */
function priorWeight(readings: readonly LifeReading[], prior: LifePrior, life: Weibull): number {
  const hazardAtAge = -Math.log(prior.level)
  const point = { logAge: Math.log(ageAtSurvival(life, prior.level)), logShape: Math.log(life.shape) }
  const known = -objectiveAt(readings, point, hazardAtAge, prior).ageAge
  return Math.min(1, 1 / prior.ageSpread ** 2 / known)
}
